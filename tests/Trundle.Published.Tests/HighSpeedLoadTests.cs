using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Load at high vehicle speed. Every row of Data/speed_load_pct.csv: Automotive Engineering textbook p. 291, fig. 10.1-14, citing ETRTO (read);
/// the 5 km/h rows are straight lines between its rows, as UN R30 2.33 has them (from memory).
/// </summary>
public sealed class HighSpeedLoadTests
{
    private static readonly PublishedTable Table = PublishedTable.Of("speed_load_pct.csv");

    [Fact]
    public void Every_row_is_the_table()
    {
        foreach (var row in Table.Rows)
        {
            var speed = Speed.FromKilometresPerHour(double.Parse(Table.Cell(row, "vehicle_max_speed_km_h"), CultureInfo.InvariantCulture));
            foreach (var symbol in new[] { "V", "W", "Y" })
            {
                if (Table.Cell(row, $"{symbol}_pct") is { Length: > 0 } percent)
                {
                    Share(symbol, speed).ShouldBe(double.Parse(percent, CultureInfo.InvariantCulture) / 100, 1e-9, $"{symbol} at {speed}");
                }
                else
                {
                    HighSpeedLoad.Share(Service(symbol), speed).ShouldBe(new SpeedLoad.AboveSymbol(), $"{symbol} at {speed}");
                }
            }
        }
    }

    [Theory]
    [InlineData("205/55R16 94V", 235, 0.925 * 670)]
    [InlineData("205/55R16 94W", 255, 0.925 * 670)]
    [InlineData("275/35R20 102Y", 285, 0.925 * 850)]
    [InlineData("205/55R16 94V", 200, 670)]
    [InlineData("205/55R16 94H", 210, 670)]
    [InlineData("205/55R16 94T", 150, 670)]
    public void Anchors(string marking, double kilometresPerHour, double kilograms) =>
        HighSpeedLoad.LoadAt(MarkingReader.Read(marking).Value.Service, Speed.FromKilometresPerHour(kilometresPerHour))
            .ShouldNotBeNull().Kilograms.ShouldBe(kilograms, 1e-9);

    [Theory]
    [InlineData("205/55R16 94H", 211)]
    [InlineData("205/55R16 94V", 241)]
    public void Above_the_symbol_there_is_no_load(string marking, double kilometresPerHour)
    {
        var service = MarkingReader.Read(marking).Value.Service;
        HighSpeedLoad.LoadAt(service, Speed.FromKilometresPerHour(kilometresPerHour)).ShouldBeNull();
        HighSpeedLoad.Share(ServiceDescriptionSpeed.Of(service), Speed.FromKilometresPerHour(kilometresPerHour)).ShouldBe(new SpeedLoad.AboveSymbol());
    }

    [Theory]
    [InlineData("275/35ZR20 (102Y)", 310)]
    [InlineData("275/35ZR20", 200)]
    [InlineData("205/60VR15", 220)]
    public void What_only_the_maker_can_say_is_asked_for(string marking, double kilometresPerHour) =>
        HighSpeedLoad.Share(ServiceDescriptionSpeed.Of(MarkingReader.Read(marking).Value.Service), Speed.FromKilometresPerHour(kilometresPerHour))
            .ShouldBe(new SpeedLoad.AskTheMaker());

    private static ServiceDescriptionSpeed Service(string symbol) => new(symbol, SpeedSymbols.Of(symbol)!.Speed, false);

    private static double Share(string symbol, Speed speed) =>
        HighSpeedLoad.Share(Service(symbol), speed).Match(known => known.Share, () => double.NaN, () => double.NaN);
}
