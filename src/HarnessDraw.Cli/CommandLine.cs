namespace HarnessDraw.Cli;
/// <summary>x</summary>
internal static class CommandLine { public static int Run(string[] args, Terminal t) => 0; }
