using HarnessDraw.Cli;

return CommandLine.Run(args, Terminal.OfProcess());
