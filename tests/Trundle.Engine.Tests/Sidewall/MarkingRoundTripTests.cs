using System.Globalization;
using System.Text;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Tests.Sidewall;

/// <summary>Seeded markings made from known parts, spelled at random in case and spacing, read back to their parts.</summary>
public sealed class MarkingRoundTripTests
{
    private static readonly string[] Symbols = ["L", "M", "N", "P", "Q", "R", "S", "T", "U", "H", "V", "W", "Y"];

    [Fact]
    public void Metric_markings_are_read_back_to_their_parts()
    {
        var random = new Random(40_711);
        for (var i = 0; i < 20_000; i++)
        {
            var prefix = Pick(random, "", "", "", "P", "LT", "HL", "ST", "T");
            var width = 125 + (10 * random.Next(0, 22));
            var aspect = 25 + (5 * random.Next(0, 12));
            var construction = Pick(random, "R", "R", "R", "ZR", "RF", "D", "B", "-");
            var rim = random.Next(12, 24);
            var single = random.Next(62, 122);
            var dual = random.Next(3) == 0 ? single - 2 : (int?)null;
            var symbol = Pick(random, Symbols);
            var extraLoad = random.Next(4) == 0;
            var parts = new List<string> { prefix, Text(width), "/", Text(aspect), " ", construction, Text(rim), "  ", Text(single) };
            if (dual is { } d)
            {
                parts.Add($"/{Text(d)}");
            }

            parts.Add(symbol);
            if (extraLoad)
            {
                parts.Add("  ");
                parts.Add(Pick(random, "XL", "EXTRA LOAD", "REINFORCED", "RF"));
            }

            var typed = Spelled(random, parts);
            var read = MarkingReader.Read(typed);
            read.IsRead.ShouldBeTrue($"{typed}: {read.Problem?.Message}");
            var marking = read.Value;
            marking.Size.Prefix.ShouldBe(prefix, typed);
            marking.Size.SectionWidth!.Value.Millimetres.ShouldBe(width, 1e-9, typed);
            marking.Size.AspectRatioPercent.ShouldBe(aspect, typed);
            marking.Size.RimDiameterInches.ShouldBe(rim, typed);
            marking.Size.RunFlat.ShouldBe(construction == "RF", typed);
            marking.Size.ConstructionToBeRead.ShouldBe(construction == "-", typed);
            marking.Size.Construction.ShouldBe(construction switch { "D" or "-" => Construction.Diagonal, "B" => Construction.BiasBelted, _ => Construction.Radial }, typed);
            marking.Service.LoadIndexSingle.ShouldBe(single, typed);
            marking.Service.LoadIndexDual.ShouldBe(dual, typed);
            marking.Service.SpeedSymbol.ShouldBe(symbol, typed);
            marking.Service.Speed.ShouldBe(SpeedSymbols.Of(symbol)!.Speed, typed);
            marking.Service.ExtraLoad.ShouldBe(extraLoad, typed);

            // What is written in one spelling is read as itself.
            MarkingReader.Read(marking.Size.Text).Value.Size.Text.ShouldBe(marking.Size.Text);
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Pick(Random random, params string[] among) => among[random.Next(among.Length)];

    /// <summary>Joins parts; "  " is a blank that must stand, " " one that may.</summary>
    private static string Spelled(Random random, List<string> parts)
    {
        var text = new StringBuilder();
        foreach (var part in parts)
        {
            if (part.Trim().Length == 0)
            {
                text.Append(part.Length == 2 ? Pick(random, " ", "  ", "\u00a0") : Pick(random, "", " "));
                continue;
            }

            text.Append(random.Next(3) == 0 ? part.ToLowerInvariant() : part);
            if (random.Next(4) == 0 && !char.IsAsciiDigit(part[^1]))
            {
                text.Append(' ');
            }
        }

        return text.ToString();
    }
}
