using System.Globalization;
using Trundle.Engine.Reference;

namespace Trundle.Published.Tests;

/// <summary>Every row of Data/speed_symbol.csv (UN R30 section 2, read; the row (Y) from memory).</summary>
public sealed class SpeedSymbolTableTests
{
    private static readonly PublishedTable Table = PublishedTable.Of("speed_symbol.csv");

    [Fact]
    public void Every_row_is_the_table()
    {
        Table.Rows.Count.ShouldBe(32);
        foreach (var row in Table.Rows)
        {
            var symbol = SpeedSymbols.Of(Table.Cell(row, "symbol"));
            symbol.ShouldNotBeNull();
            var speed = Table.Cell(row, "km_h");
            symbol.Speed.KilometresPerHour.ShouldBe(double.Parse(speed.TrimStart('>'), CultureInfo.InvariantCulture), 1e-9);
            symbol.Speed.MilesPerHour.ShouldBe(double.Parse(Table.Cell(row, "mph_calc").TrimStart('>'), CultureInfo.InvariantCulture), 0.0501);
            symbol.Above.ShouldBe(speed.StartsWith('>'));
        }
    }

    /// <summary>The order column of the same table, H between U and V.</summary>
    [Fact]
    public void Symbols_sort_by_speed_and_never_by_letter()
    {
        var listed = Table.Rows.Where(r => Table.Cell(r, "sort_order").Length > 0).OrderBy(r => int.Parse(Table.Cell(r, "sort_order"), CultureInfo.InvariantCulture)).Select(r => Table.Cell(r, "symbol"));
        SpeedSymbols.List.Select(s => s.Symbol).Where(s => s is not ("ZR" or "VR")).ShouldBe(listed);
        (SpeedSymbols.Of("U")! < SpeedSymbols.Of("H")!).ShouldBeTrue();
        (SpeedSymbols.Of("H")! < SpeedSymbols.Of("V")!).ShouldBeTrue();
        (SpeedSymbols.Of("(Y)")! > SpeedSymbols.Of("Y")!).ShouldBeTrue();
    }

    [Theory]
    [InlineData("I")]
    [InlineData("O")]
    [InlineData("X")]
    [InlineData("Z")]
    [InlineData("A9")]
    [InlineData("")]
    public void What_is_no_symbol_has_no_row(string symbol) => SpeedSymbols.Of(symbol).ShouldBeNull();
}
