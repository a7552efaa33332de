using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>What a load is called where the thing has several: 'headlamp left beams 56b'; a word that the thing's name ends with is not said twice ('coolant sender 1'), and 'draws' says nothing ('alternator L').</summary>
internal static class LoadName
{
    public static string Of(Thing thing, Element element)
    {
        var space = element.Id.IndexOf(' ', StringComparison.Ordinal);
        var idle = space > 0 && (thing.Id.EndsWith(element.Id[..space], StringComparison.Ordinal) || element.Id[..space] == "draws");
        return $"{thing.Id} {(idle ? element.Id[(space + 1)..] : element.Id)}";
    }
}
