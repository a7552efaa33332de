namespace HarnessDraw.Cli;

/// <summary>The arguments read well one by one but ask for something that cannot be; ends the run with the exit code for wrong usage.</summary>
internal sealed class WrongUsageException(string message) : Exception(message);
