using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>A circuit while its nets are made: what was typed, with its pins resolved (unknown ones were reported and left out).</summary>
internal sealed record CircuitDraft(InputText Name, InputMap Map, Circuit Circuit)
{
    public ImmutableArray<(PinRef Pin, InputText At)> Froms { get; init; } = [];

    public ImmutableArray<(PinRef Pin, InputText At)> Feeds { get; init; } = [];

    /// <summary>Where a circuit of returns goes.</summary>
    public (PinRef Pin, InputText At)? To { get; init; }

    public Thing? Mate { get; init; }

    /// <summary>Cavities fixed by hand, checked against the mate.</summary>
    public ImmutableArray<string> Cavities { get; init; } = [];

    /// <summary>Colours fixed by hand; with several, one a conductor.</summary>
    public ImmutableArray<string> Colours { get; init; } = [];

    public ImmutableArray<(PinRef Pin, InputText At)> RouteBy { get; init; } = [];

    public ImmutableArray<HandWire> ByHand { get; init; } = [];

    /// <summary>True when a pin named in it could not be resolved: its nets would be wrong and are not judged.</summary>
    public bool Broken { get; init; }
}
