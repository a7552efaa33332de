using System.Collections.Immutable;

namespace HarnessDraw.Reading.Edits;

/// <summary>Applies changes to the text of a description and of the layout that it names.</summary>
internal static class FileEdits
{
    public static (IFileSource? Files, string? Problem) Apply(string descriptionFile, IFileSource files, ImmutableArray<string> changes)
    {
        var edited = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add(descriptionFile, files.ReadText(descriptionFile));
        foreach (var change in changes)
        {
            var file = DescriptionEdit.IsPath(change) ? LayoutOf(descriptionFile, edited[descriptionFile]) : descriptionFile;
            if (file is null || !(edited.ContainsKey(file) || files.Exists(file)))
            {
                return (null, "the description names no layout whose paths could be changed");
            }

            var text = edited.TryGetValue(file, out var known) ? known : files.ReadText(file);
            var (result, problem) = DescriptionEdit.IsPath(change) ? DescriptionEdit.SetPath(text, change) : DescriptionEdit.Set(text, change);
            if (result is null)
            {
                return (null, problem);
            }

            edited = edited.SetItem(file, result);
        }

        return (new EditedFiles(files, edited), null);
    }

    private static string? LayoutOf(string descriptionFile, string text) =>
        YamlPlace.Of(text)?.Find("vehicle-layout") is { IsLeaf: true } named ? InputFiles.Beside(descriptionFile, text[named.Start..named.End].Trim('\'', '"')) : null;
}
