using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Published.Tests;

/// <summary>
/// Every row of Data/load_index.csv (UN R30 Annex 4 and ISO 4000-1: 60 to 150 second-hand from several public copies that agree, the rest from
/// memory) and two independent checks that catch a misprint: the preferred numbers of ISO 3 and the generating rule.
/// </summary>
public sealed class LoadIndexTableTests
{
    /// <summary>ISO 3, series R40 (the standard's basic series, a fact of arithmetic).</summary>
    private static readonly int[] R40 =
    [
        100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300,
        315, 335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950,
    ];

    private static readonly PublishedTable Table = PublishedTable.Of("load_index.csv");

    [Fact]
    public void Every_row_is_the_table()
    {
        Table.Rows.Count.ShouldBe(280);
        foreach (var row in Table.Rows)
        {
            var index = int.Parse(Table.Cell(row, "load_index"), CultureInfo.InvariantCulture);
            var load = LoadIndex.LoadOf(index);
            load.ShouldNotBeNull();
            load.Value.Kilograms.ShouldBe(double.Parse(Table.Cell(row, "kg"), CultureInfo.InvariantCulture), 1e-9, $"load index {index}");
            load.Value.Pounds.ShouldBe(double.Parse(Table.Cell(row, "lb_rounded"), CultureInfo.InvariantCulture), 0.5001, $"load index {index}");
            LoadIndex.SourceOf(index)!.Status.ShouldBe(Table.Cell(row, "status").StartsWith("read", StringComparison.Ordinal) ? SourceStatus.SecondHand : SourceStatus.FromMemory);
        }
    }

    [Theory]
    [InlineData(0, 45)]
    [InlineData(28, 100)]
    [InlineData(62, 265)]
    [InlineData(75, 387)]
    [InlineData(80, 450)]
    [InlineData(91, 615)]
    [InlineData(94, 670)]
    [InlineData(100, 800)]
    [InlineData(103, 875)]
    [InlineData(105, 925)]
    [InlineData(108, 1000)]
    [InlineData(115, 1215)]
    [InlineData(120, 1400)]
    [InlineData(121, 1450)]
    [InlineData(152, 3550)]
    [InlineData(160, 4500)]
    [InlineData(204, 16000)]
    [InlineData(223, 27250)]
    [InlineData(279, 136000)]
    public void Anchors(int index, double kilograms) => LoadIndex.LoadOf(index)!.Value.Kilograms.ShouldBe(kilograms, 1e-9);

    [Fact]
    public void Every_even_index_is_a_preferred_number_of_R40()
    {
        for (var index = 0; index <= LoadIndex.Greatest; index += 2)
        {
            var scaled = LoadIndex.LoadOf(index)!.Value.Kilograms;
            while (scaled < 99.9)
            {
                scaled *= 10;
            }

            while (scaled > 999.9)
            {
                scaled /= 10;
            }

            R40.ShouldContain((int)Math.Round(scaled), $"load index {index}");
            scaled.ShouldBe(Math.Round(scaled), 1e-9, $"load index {index}");
        }
    }

    /// <summary>450 kg × 10^((LI − 80)/80) holds within 2 %, and the loads rise strictly.</summary>
    [Fact]
    public void Loads_rise_and_keep_to_the_generating_rule()
    {
        for (var index = 0; index <= LoadIndex.Greatest; index++)
        {
            var load = LoadIndex.LoadOf(index)!.Value.Kilograms;
            var rule = 450 * Math.Pow(10, (index - 80) / 80.0);
            load.ShouldBe(rule, rule * 0.0194);
            if (index > 0)
            {
                load.ShouldBeGreaterThan(LoadIndex.LoadOf(index - 1)!.Value.Kilograms);
            }
        }
    }

    [Fact]
    public void Outside_the_table_there_is_no_load()
    {
        LoadIndex.LoadOf(-1).ShouldBeNull();
        LoadIndex.LoadOf(280).ShouldBeNull();
        LoadIndex.LeastFor(Trundle.Measures.Mass.FromKilograms(616)).ShouldBe(92);
        LoadIndex.LeastFor(Trundle.Measures.Mass.FromKilograms(615)).ShouldBe(91);
        LoadIndex.LeastFor(Trundle.Measures.Mass.FromKilograms(200_000)).ShouldBeNull();
    }
}
