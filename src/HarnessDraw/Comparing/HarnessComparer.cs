using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Comparing;

/// <summary>What is done to a wire of a built harness.</summary>
public enum ChangeKind
{
    /// <summary>A wire that was not there.</summary>
    Add,

    /// <summary>The same ends, but another length, size, type or colour: cut anew.</summary>
    Cut,

    /// <summary>The same piece of wire, an end elsewhere.</summary>
    Move,
    Remove,
}

/// <summary>One change, by wire; <paramref name="How"/> says in words what becomes what.</summary>
public sealed record WireChange(ChangeKind Kind, string Wire, string Circuit, string How);

/// <summary>All changes from one built state to another, wires in natural order, and how many stay.</summary>
public sealed record HarnessChanges(FrozenHarness Old, FrozenHarness New, ImmutableArray<WireChange> Changes, int Unchanged);

/// <summary>Compares two states of a harness wire by wire.</summary>
public static class HarnessComparer
{
    /// <summary>The changes; refused when the two are not one harness, or a state mixes halves of different revisions.</summary>
    public static Outcome<HarnessChanges> Compare(FrozenHarness old, FrozenHarness now)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(now);
        var bag = new DiagnosticBag();
        foreach (var side in new[] { old, now })
        {
            if (side.HalfRevisions.Values.Distinct(StringComparer.Ordinal).Count() > 1)
            {
                var halves = string.Join(", ", side.HalfRevisions.Select(h => $"half {h.Key} at revision {h.Value}"));
                bag.Error(DiagnosticCodes.MixedRevisions, $"'{side.Harness}' mixes halves of different revisions: {halves}", null, "freeze both halves at one revision: they share a connector");
            }
        }

        if (!IsSame(old, now))
        {
            bag.Error(DiagnosticCodes.MixedRevisions, $"{Words(old)} and {Words(now)} are two harnesses, not two revisions of one", null,
                "compare states of one harness: the file's name, or 'harness' and 'vehicle', must be the same");
        }

        if (old.Revision == now.Revision && old.SourceHash != now.SourceHash)
        {
            bag.Warning(DiagnosticCodes.MixedRevisions, $"both sides say revision {old.Revision ?? "(none)"} and yet differ", null, "give the new state a revision of its own before anybody builds from it");
        }

        return new(bag.HasErrors ? null : Changes(old, now), bag.ToSorted());
    }

    /// <summary>One harness by the name of its file, or, where a copy got another name, by what it says that it is.</summary>
    private static bool IsSame(FrozenHarness old, FrozenHarness now) =>
        old.Harness == now.Harness || (old.Title == now.Title && (old.Vehicle ?? now.Vehicle) == (now.Vehicle ?? old.Vehicle));

    private static string Words(FrozenHarness state) => $"'{state.Harness}' ({state.Title}{(state.Vehicle is { } vehicle ? $", {vehicle}" : "")})";

    /// <summary>A kind of change as one word.</summary>
    public static string Word(ChangeKind kind) => kind switch { ChangeKind.Add => "add", ChangeKind.Cut => "cut", ChangeKind.Move => "move", _ => "remove" };

    private static HarnessChanges Changes(FrozenHarness old, FrozenHarness now)
    {
        var before = old.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);
        var after = now.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);
        var changes = new List<WireChange>();
        foreach (var wire in now.Wires)
        {
            if (!before.TryGetValue(wire.Id, out var was))
            {
                changes.Add(new(ChangeKind.Add, wire.Id, wire.Circuit, $"{PointWords.OfNode(wire.From)} to {PointWords.OfNode(wire.To)}, {wire.Size} {wire.Colour}, {Mm(wire.CutMm)}"));
            }
            else if (Change(was, wire) is { } change)
            {
                changes.Add(change);
            }
        }

        changes.AddRange(old.Wires.Where(w => !after.ContainsKey(w.Id)).Select(w => new WireChange(ChangeKind.Remove, w.Id, w.Circuit, $"{PointWords.OfNode(w.From)} to {PointWords.OfNode(w.To)}, {w.Size} {w.Colour}")));
        var ordered = changes.OrderBy(c => c.Wire, NaturalOrder.Instance).ToImmutableArray();
        return new(old, now, ordered, now.Wires.Count(w => before.ContainsKey(w.Id)) - ordered.Count(c => c.Kind is ChangeKind.Cut or ChangeKind.Move));
    }

    // a wire that has to be another piece is cut anew, wherever its ends go
    private static WireChange? Change(FrozenWire was, FrozenWire wire)
    {
        var how = new List<string>();
        Say(how, "size", was.Size, wire.Size);
        Say(how, "type", was.WireType, wire.WireType);
        Say(how, "colour", was.Colour, wire.Colour);
        if (was.CutMm != wire.CutMm)
        {
            Say(how, "length", Mm(was.CutMm), Mm(wire.CutMm));
        }

        var isCut = how.Count > 0;
        Say(how, "end A", PointWords.OfNode(was.From), PointWords.OfNode(wire.From));
        Say(how, "end B", PointWords.OfNode(was.To), PointWords.OfNode(wire.To));
        if (how.Count == 0 && !was.Segments.SequenceEqual(wire.Segments))
        {
            how.Add($"route {string.Join(' ', was.Segments)} becomes {string.Join(' ', wire.Segments)}");
        }

        return how.Count == 0 ? null : new(isCut ? ChangeKind.Cut : ChangeKind.Move, wire.Id, wire.Circuit, string.Join("; ", how));
    }

    private static void Say(List<string> how, string what, string was, string now)
    {
        if (was != now)
        {
            how.Add($"{what} {was} becomes {now}");
        }
    }

    private static string Mm(double? value) => value is { } mm ? $"{mm:0.#} mm" : "length unknown";
}
