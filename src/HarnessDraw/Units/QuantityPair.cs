namespace HarnessDraw.Units;

/// <summary>Two quantities that share a unit, in the kind's own unit: '2 to 60 mm', '62 x 98 mm', 'round 40 mm'.</summary>
public readonly record struct QuantityPair(double First, double Second, string Unit, bool IsRound)
{
    public static bool TryParse(string text, QuantityKind kind, string joint, bool orRound, out QuantityPair pair)
    {
        ArgumentNullException.ThrowIfNull(text);
        pair = default;
        const string round = "round ";
        if (orRound && text.StartsWith(round, StringComparison.Ordinal))
        {
            if (!Quantity.TryParse(text[round.Length..], kind, out var diameter, out _))
            {
                return false;
            }

            pair = new QuantityPair(diameter.Value, diameter.Value, diameter.Unit, true);
            return true;
        }

        var at = text.IndexOf(joint, StringComparison.Ordinal);
        if (at <= 0 || !Quantity.TryParse(text[(at + joint.Length)..], kind, out var second, out _))
        {
            return false;
        }

        var firstText = text[..at].Trim();
        if (!Quantity.TryParse(firstText, kind, out var first, out _) && !Quantity.TryParse($"{firstText} {second.Unit}", kind, out first, out _))
        {
            return false;
        }

        pair = new QuantityPair(first.Value, second.Value, second.Unit, false);
        return true;
    }
}
