using HarnessDraw.Writing.Starter;

namespace HarnessDraw.Tests.Cli;

/// <summary>A small harness on disk, as 'new' writes it, for tests of the commands.</summary>
internal static class StarterFiles
{
    public static string WriteTo(TemporaryFolder folder, string name = "van", Func<string, string>? change = null)
    {
        var answers = new StarterAnswers("Test van") { CoolingFan = "electric", Heating = "blower" };
        folder.File($"{name}-layout.yaml", StarterLayout.Write(answers));
        var text = StarterDescription.Write(answers, $"{name}-layout.yaml");
        return folder.File($"{name}.yaml", change is null ? text : Changed(text, change));
    }

    private static string Changed(string text, Func<string, string> change)
    {
        var changed = change(text);
        Assert.NotEqual(text, changed);
        return changed;
    }
}
