using System.Globalization;
using HarnessDraw.Cli;

// numbers and words come out alike whatever the machine's locale says, even where its runtime is told to have one
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
RoomAhead.Take();
return CommandLine.Run(args, Terminal.OfProcess());
