using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.InUse;

/// <summary>
/// UK SI 1986/1078 reg. 26 (from memory; in substance read in the MOT inspection manual 4.1) in every cell: who stands in front (first letter) and who behind
/// or beside, D diagonal, B bias-belted, R radial; '.' passes, 'F' fails, '?' is referred. And what the trade adds in the same cells under other rules.
/// </summary>
public sealed class MixingMatrixTests
{
    private const string Letters = "DBR";

    private static readonly Dictionary<char, string> Built = new() { ['D'] = "195/65 D15 91H", ['B'] = "195/65 B15 91H", ['R'] = "195/65 R15 91H" };

    /// <summary>Paragraph, rule, and the nine cells: DD DB DR, BD BB BR, RD RB RR.</summary>
    public static TheoryData<string, string, string> Paragraphs => new()
    {
        { "26(1)", "mix.axle", ".FF F.F FF." },
        { "26(2)", "mix.radial-in-front", "... ... FF." },
        { "26(2)", "mix.bias-belted-in-front", "... F.. ..." },
        { "26(2) and (3), duals", "mix.other-vehicle", "... ?.. ??." },
        { "26(2) and (3), three axles", "mix.other-vehicle", "... ?.. ??." },
        { "26(2) and (3), wide", "mix.other-vehicle", "... ?.. ??." },
        { "26(3), slow", "mix.bias-belted-in-front", "... ... ..." },
        { "26(4), steered", "mix.steered", ".FF F.F FF." },
        { "26(4), driven", "mix.driven", ".FF F.F FF." },
        { "26(5), spare", "mix.axle", "... ... ..." },
    };

    [Theory]
    [MemberData(nameof(Paragraphs))]
    public void Reg_26_in_every_cell(string paragraph, string rule, string cells)
    {
        var expected = cells.Replace(" ", "", StringComparison.Ordinal);
        expected.Length.ShouldBe(9);
        for (var i = 0; i < 9; i++)
        {
            var (first, second) = (Letters[i / 3], Letters[i % 3]);
            var found = ConstructionMix.Judge(Vehicle(paragraph, first, second)).FirstOrDefault(f => f.Rule == rule && f.Category != Category.None);
            (found?.Category switch { null => '.', Category.Refer => '?', _ => 'F' }).ShouldBe(expected[i], $"{paragraph}: {first} and {second}");
        }
    }

    /// <summary>Every row of the table is what decides in some cell, under its own rule set, with its own source.</summary>
    [Fact]
    public void Every_row_of_the_table_decides_somewhere()
    {
        foreach (var row in MixingRules.List)
        {
            var said = Paragraphs.Select(p => p.Data.Item1)
                .Concat(["all driven"])
                .SelectMany(p => Letters.SelectMany(a => Letters.Select(b => (Paragraph: p, First: a, Second: b))))
                .Where(c => row.First is null || (MixingRules.Word(row.First.Value)[0] == char.ToLowerInvariant(c.First) && MixingRules.Word(row.Second!.Value)[0] == char.ToLowerInvariant(c.Second)))
                .SelectMany(c => ConstructionMix.Judge(Vehicle(c.Paragraph, c.First, c.Second) with { Rules = row.InUse.Set }))
                .Where(f => f.Rule == row.Rule && f.Category == row.Category && f.Source == row.InUse.Source);
            said.ShouldNotBeEmpty($"{row.InUse.Id}, {row.Scope}");
        }
    }

    private static FittedVehicle Vehicle(string paragraph, char first, char second)
    {
        var (front, rear) = (Built[first], Built[second]);
        var steered = Bay.Axle(steered: true);
        var driven = Bay.Axle(driven: true);
        Vehicle Two(Axle a, Axle b) => new() { Axles = [a, b] };
        return paragraph switch
        {
            "26(1)" => Fitted(Two(steered, driven), ("1L", front), ("1R", rear)),
            "26(2)" => Fitted(Two(steered, driven), ("1L", front), ("1R", front), ("2L", rear), ("2R", rear)),
            "26(2) and (3), duals" => Fitted(Two(steered, driven with { Dual = true }), ("1L", front), ("2Li", rear), ("2Lo", rear)),
            "26(2) and (3), three axles" => Fitted(new Vehicle { Axles = [steered, driven, Bay.Axle()] }, ("1L", front), ("2L", rear)),
            "26(2) and (3), wide" => Fitted(Two(steered, driven), ("1L", Wide(front)), ("2L", Wide(rear))),
            "26(3), slow" => Fitted(Two(steered, driven) with { TopSpeed = Speed.FromMilesPerHour(30) }, ("1L", front), ("2L", rear)),
            "26(4), steered" => Fitted(new Vehicle { Axles = [steered, steered, driven] }, ("1L", front), ("2L", rear)),
            "26(4), driven" => Fitted(new Vehicle { Axles = [steered, driven, driven] }, ("2L", front), ("3L", rear)),
            "26(5), spare" => Fitted(Two(steered, driven), ("1L", front), ("1R", first == second ? front : "T125/80 D15 95M")),
            "all driven" => Fitted(Two(steered, driven) with { Drive = Drive.All }, ("1L", front), ("2L", rear)),
            _ => throw new ArgumentOutOfRangeException(nameof(paragraph)),
        };
    }

    private static string Wide(string marking) => marking.Replace("195/65", "305/65", StringComparison.Ordinal);

    private static FittedVehicle Fitted(Vehicle vehicle, params (string At, string Marking)[] tyres) =>
        new(vehicle, [.. tyres.Select(t => Bay.On(t.At, t.Marking))], RuleSet.UnitedKingdom, null);
}
