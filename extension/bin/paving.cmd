@echo off
rem Runs the command line with the editor's own Node where the editor tells of it, else with the one on the path.
setlocal
if exist "%PAVING_NODE%" (
  set ELECTRON_RUN_AS_NODE=1
  "%PAVING_NODE%" "%~dp0..\paving.cjs" %*
) else (
  node "%~dp0..\paving.cjs" %*
)
