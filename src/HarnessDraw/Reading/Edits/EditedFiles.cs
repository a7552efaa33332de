using System.Collections.Immutable;

namespace HarnessDraw.Reading.Edits;

/// <summary>Files as they are, but for some whose text was changed in memory.</summary>
public sealed class EditedFiles(IFileSource files, ImmutableSortedDictionary<string, string> edited) : IFileSource
{
    public bool Exists(string path) => edited.ContainsKey(path) || files.Exists(path);

    public bool IsFolder(string path) => files.IsFolder(path);

    public IReadOnlyList<string> NamesIn(string folder) => files.NamesIn(folder);

    public string ReadText(string path) => edited.TryGetValue(path, out var text) ? text : files.ReadText(path);

    public byte[] ReadBytes(string path) => files.ReadBytes(path);

    public long SizeBytes(string path) => edited.TryGetValue(path, out var text) ? text.Length : files.SizeBytes(path);
}
