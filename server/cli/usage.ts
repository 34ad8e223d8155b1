import type { CommanderError } from 'commander';

/** What is wrong with a command as given, in plain words. */
export function usageComplaint({ code, message }: CommanderError): string {
  const [, named = '', meant] = /'([^']*)'[^]*?(?:Did you mean (.*)\?\))?$/.exec(message) ?? [];
  const help = meant === undefined ? 'See: paving --help' : `Did you mean ${meant}?`;
  switch (code) {
    case 'commander.unknownCommand':
      return `there is no verb ${named}. ${meant === undefined ? `To check a file write: paving check ${named}` : help}`;
    case 'commander.unknownOption':
      return `there is no option ${named} here. ${help}`;
    case 'commander.optionMissingArgument':
      return `the option ${named} wants something behind it. See: paving --help`;
    case 'commander.excessArguments':
      return 'more was given than this verb takes. See: paving --help';
    default:
      return `${message.replace(/^error: /, '')}. See: paving --help`;
  }
}
