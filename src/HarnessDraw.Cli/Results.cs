namespace HarnessDraw.Cli;

/// <summary>A result of one file: onto the output, or into a folder when one is named.</summary>
internal static class Results
{
    public static void Put(Terminal terminal, string? folder, string name, byte[] content)
    {
        if (folder is null)
        {
            terminal.Put(content);
            return;
        }

        var output = new OutputFolder(folder);
        output.Write(name, content);
        terminal.Say($"{name} written to {DiagnosticText.Plain(output.Path)}");
    }
}
