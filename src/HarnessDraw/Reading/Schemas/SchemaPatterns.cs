using System.Text;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>The patterns (ECMA 262) that say in a JSON Schema what <see cref="Quantity"/> and <see cref="QuantityPair"/> read.</summary>
internal static class SchemaPatterns
{
    public const string Number = @"[+-]?([0-9]+(\.[0-9]+)?|\.[0-9]+)";
    private const string NumberOrFraction = @"[+-]?([0-9]+/[0-9]+|([0-9]+(\.[0-9]+)?|\.[0-9]+)( +[0-9]+/[0-9]+)?)";

    public static string Of(QuantityShape shape)
    {
        var quantity = Quantity(shape.Kind);
        if (shape.Kind == QuantityKind.Length)
        {
            quantity = $"{quantity}|{NumberOrFraction} *ft +{NumberOrFraction} *{Units(shape.Kind)}";
        }

        return shape.OrUnknown ? $"^(unknown|{quantity})$" : $"^({quantity})$";
    }

    public static string Of(PairShape pair)
    {
        var round = pair.OrRound ? $"|round {Quantity(pair.Kind)}" : "";
        return $"^({NumberOrFraction} *({Units(pair.Kind)})?{pair.Joint}{Quantity(pair.Kind)}{round})$";
    }

    private static string Quantity(QuantityKind kind) => $"{NumberOrFraction} *{Units(kind)}";

    private static string Units(QuantityKind kind)
    {
        var text = new StringBuilder("(");
        foreach (var unit in kind.Units)
        {
            text.Append(text.Length > 1 ? "|" : "").Append(unit.Symbol);
        }

        return text.Append(')').ToString();
    }
}
