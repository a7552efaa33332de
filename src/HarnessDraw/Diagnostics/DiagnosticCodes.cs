namespace HarnessDraw.Diagnostics;

/// <summary>The short stable names of messages about the input, each explained in <see cref="Explain"/>.</summary>
public static class DiagnosticCodes
{
    public const string AliasCycle = "alias-cycle";
    public const string AliasUnknown = "alias-unknown";
    public const string Ambiguous = "ambiguous";
    public const string CaseOnly = "case-only";
    public const string Choice = "choice";
    public const string ChosenTwice = "chosen-twice";
    public const string Contradiction = "contradiction";
    public const string Cycle = "cycle";
    public const string DuplicateKey = "duplicate-key";
    public const string DuplicateName = "duplicate-name";
    public const string FileMissing = "file-missing";
    public const string FileTooBig = "file-too-big";
    public const string FileUnreadable = "file-unreadable";
    public const string FontFile = "font-file";
    public const string KeyNotText = "key-not-text";
    public const string ListLength = "list-length";
    public const string MissingKey = "missing-key";
    public const string MixedRevisions = "mixed-revisions";
    public const string NoReturn = "no-return";
    public const string NotACable = "not-a-cable";
    public const string NotBuildable = "not-buildable";
    public const string NoteForm = "note-form";
    public const string NotPlaced = "not-placed";
    public const string NothingToFeed = "nothing-to-feed";
    public const string NotText = "not-text";
    public const string OutlineSvg = "outline-svg";
    public const string Quantity = "quantity";
    public const string RuleText = "rule-text";
    public const string ShapeMismatch = "shape";
    public const string TooDeep = "too-deep";
    public const string TooManyAliases = "too-many-aliases";
    public const string TooManyMessages = "too-many-messages";
    public const string UnknownChoice = "unknown-choice";
    public const string UnknownKey = "unknown-key";
    public const string UnknownName = "unknown-name";
    public const string UnknownNotAllowed = "unknown-not-allowed";
    public const string UnknownPin = "unknown-pin";
    public const string WrongKind = "wrong-kind";
    public const string YamlSyntax = "yaml-syntax";

    /// <summary>One sentence on what a code means and what to do; null for a code that is not ours.</summary>
    public static string? Explain(string code) => code switch
    {
        AliasCycle => "A YAML alias (*name) stands inside the value it repeats. Write the value out.",
        AliasUnknown => "A YAML alias (*name) repeats an anchor (&name) that is not there. Define the anchor above its use.",
        CaseOnly => "Two names differ only by capital letters, which people and file systems mix up. Rename one of them.",
        Choice => "The value is not one of the words that may stand here. The message lists them.",
        ChosenTwice => "Two keys say the same thing in different ways. Keep one of them.",
        Ambiguous => "What was asked for fits several. Say more of it, or name one of those that are listed.",
        Contradiction => "Two notes from the vehicle cannot both be right. Look or measure once more; a fault that comes and goes gives such notes too.",
        Cycle => "Things refer to each other in a ring, so nothing comes first. Break the ring at one of the named places.",
        DuplicateKey => "The same key stands twice in one block; YAML would keep only one of them. Remove or rename one.",
        DuplicateName => "Two different things have the same name, so a reference to it could mean either. Rename one.",
        FileMissing => "A file that is named is not there. File names are looked up beside the file that names them.",
        FileTooBig => "A file is larger than 5 MB; a description is a few kilobytes. Check that the right file is named.",
        FileUnreadable => "A file could not be read, or is not UTF-8 text. Check its permissions and how it was saved.",
        KeyNotText => "A key is a list or a block. Keys are words.",
        ListLength => "A list has too few or too many entries for what it says.",
        MissingKey => "A key that must be there is missing.",
        MixedRevisions => "Two states of a harness do not belong together: another harness, or halves of different revisions. Halves that share a connector are frozen together.",
        NoReturn => "A load has one fed pin and no way back: no return pin, and it does not ground itself. Half of all dead lamps lack a ground.",
        NotACable => "A wire cannot be laid out as written: its two ends are the same point, or on two sides of the firewall.",
        NotBuildable => "A condition or the usual choices break the option rules, so it can never be built.",
        NoteForm => "A note from the vehicle is not of the form 'dead: LOAD @ STATE' or 'volts: POINT @ STATE = 11.9 V', or says nothing.",
        NotPlaced => "A row or value of a wire list found no place in the description. It is left out or left open; complete it by hand.",
        NothingToFeed => "A circuit has no ends to join. Give it 'feeds', 'to', 'route-by' or 'by-hand'.",
        NotText => "A single value is expected, but a list or a block of keys stands here.",
        FontFile => "A font that is named is no TrueType file with a Unicode character map, or it is cut short. Fetch it again, or name another.",
        OutlineSvg => "A drawing that is named (body outline or logo) is no SVG with shapes in it. Save it as plain SVG with text turned into paths.",
        Quantity => "A quantity needs a number and one of the expected units, such as '4.6 A' or '1200 mm'.",
        RuleText => "An option rule reads 'CHOICE needs CHOICE' or 'CHOICE excludes CHOICE'.",
        ShapeMismatch => "A list or a block of keys is expected here, but something else was given.",
        TooDeep => "Blocks are nested deeper than 64 levels. No description needs that.",
        TooManyAliases => "YAML aliases repeat so much that the file would grow beyond all measure. Write less of them.",
        TooManyMessages => "There are more messages than are worth printing. Mend the first ones and run again.",
        UnknownChoice => "No option has such a choice, or the option has no such choice.",
        UnknownKey => "A key is not one that may stand here; most often it is mistyped.",
        UnknownName => "Nothing has this name; most often it is mistyped.",
        UnknownNotAllowed => "A value is 'unknown', but the description does not say 'unknown-allowed: yes'.",
        UnknownPin => "The thing is there, but has no such pin.",
        WrongKind => "The thing named is of a kind that cannot stand here.",
        YamlSyntax => "The file is not well-formed YAML. Check indentation, colons, brackets and quotes near the place shown.",
        _ => null,
    };
}
