using System.Globalization;
using System.Text;
using System.Xml;
using HarnessDraw.Drawing;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Tests.Writing;

/// <summary>The bytes of <see cref="SvgXml"/> are those of the runtime's own <see cref="XmlWriter"/>, which is the outside world here.</summary>
public class SvgXmlTests
{
    private static readonly string[] Letters = ["a", "Z", "0", " ", "&", "<", ">", "\"", "'", "]]>", "\t", "\n", "\r", "\u007F", "\u0085", "\u00E9", "\u03A9", "\u202E", "\u2028", "\u4E2D", "\U0001F50C", "\uFFFD", "--"];

    [Fact]
    public void Random_elements_attributes_and_texts_are_the_bytes_of_the_runtimes_writer()
    {
        var random = new Random(7);
        for (var round = 0; round < 300; round++)
        {
            using var stream = new MemoryStream();
            using var ours = new SvgXml();
            using (var theirs = XmlWriter.Create(stream, new() { Encoding = new UTF8Encoding(false), NewLineChars = "\n", NewLineHandling = NewLineHandling.None }))
            {
                ours.Start("svg");
                theirs.WriteStartElement("svg");
                WriteChildren(random, ours, theirs, 4);
                ours.End();
                theirs.WriteEndElement();
            }

            Assert.Equal(Encoding.UTF8.GetString(stream.ToArray()), Encoding.UTF8.GetString(ours.ToArray()));
        }
    }

    [Fact]
    public void Texts_longer_than_a_block_of_memory_stay_whole()
    {
        var text = string.Concat(Enumerable.Range(0, 90_000).Select(i => i % 7 == 0 ? "\U0001F50C" : i % 5 == 0 ? "&" : "x"));
        using var xml = new SvgXml();
        xml.Start("svg");
        xml.Attribute("a", text);
        xml.Text(text);
        xml.End();
        var read = System.Xml.Linq.XDocument.Load(new MemoryStream(xml.ToArray())).Root!;
        Assert.Equal(text, read.Attribute("a")!.Value);
        Assert.Equal(text, read.Value);
    }

    [Theory]
    [InlineData(0x0000)]
    [InlineData(0x001F)]
    [InlineData(0xFFFE)]
    [InlineData(0xD800)]
    [InlineData(0xDC00)]
    public void What_no_XML_file_can_hold_is_refused(int code)
    {
        var bad = (char)code + "x";
        using var xml = new SvgXml();
        xml.Start("svg");
        Assert.Throws<ArgumentException>(() => xml.Attribute("a", bad));
        Assert.Throws<ArgumentException>(() => xml.Text("good " + bad));
    }

    [Fact]
    public void Numbers_are_thousandths_rounded_away_from_nought()
    {
        var random = new Random(11);
        for (var i = 0; i < 20_000; i++)
        {
            var value = (i % 3) switch
            {
                0 => random.Next(-2_000_000, 2_000_000) / 1000.0,
                1 => random.Next(-2_000_000, 2_000_000) / 2000.0,
                _ => (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-5, 9)),
            };
            // decimal arithmetic of the runtime; 'plus nothing' takes a negative zero away
            var expected = (Math.Round(value * 1000, MidpointRounding.AwayFromZero) is var thousandths ? (decimal)thousandths / 1000 + 0m : 0).ToString("0.###", CultureInfo.InvariantCulture);
            Assert.Equal(expected, SvgNumber.Text(value));
        }
    }

    [Fact]
    public void A_colour_is_written_in_hexadecimal()
    {
        using var xml = new SvgXml();
        xml.Start("g");
        xml.Attribute("fill", new Rgb(0x16, 0x20, 0xFA));
        xml.End();
        Assert.EndsWith("<g fill=\"#1620FA\" />", Encoding.UTF8.GetString(xml.ToArray()), StringComparison.Ordinal);
    }

    private static void WriteChildren(Random random, SvgXml ours, XmlWriter theirs, int deep)
    {
        for (var i = random.Next(4); i > 0; i--)
        {
            var name = "e" + random.Next(9).ToString(CultureInfo.InvariantCulture);
            ours.Start(name);
            theirs.WriteStartElement(name);
            for (var a = random.Next(3); a > 0; a--)
            {
                var value = Random(random);
                ours.Attribute("a" + a.ToString(CultureInfo.InvariantCulture), value);
                theirs.WriteAttributeString("a" + a.ToString(CultureInfo.InvariantCulture), value);
            }

            var text = Random(random);
            ours.Text(text);
            theirs.WriteString(text);
            if (deep > 0)
            {
                WriteChildren(random, ours, theirs, deep - 1);
            }

            ours.End();
            theirs.WriteEndElement();
        }
    }

    private static string Random(Random random) => string.Concat(Enumerable.Range(0, random.Next(12)).Select(_ => Letters[random.Next(Letters.Length)]));
}
