using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Load over pressure. Sources: Automotive Engineering: Powertrain, Chassis System and Vehicle Body (textbook), p. 290 (read); a tyre maker's
/// table on a 1990 motorhome specification page (read); tyre makers' size sheets (read). Rows marked 'calc' are no published values and are
/// not checked against.
/// </summary>
public class LoadInflationTests
{
    private static readonly PublishedTable Table = PublishedTable.Of("load_inflation.csv");

    /// <summary>A load index of each row's number has the load that the row's formula column starts from.</summary>
    public static TheoryData<string, string, string, string, string> ReadRowsWithFormula
    {
        get
        {
            var data = new TheoryData<string, string, string, string, string>();
            foreach (var row in Table.Rows.Where(r => Table.Cell(r, "status") == "read" && Table.Cell(r, "formula_value").Length > 0))
            {
                data.Add(Table.Cell(row, "tyre"), Table.Cell(row, "kPa"), Table.Cell(row, "psi"), Table.Cell(row, "load_kg"), Table.Cell(row, "formula_value"));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(ReadRowsWithFormula))]
    public void Published_rows_lie_within_the_law(string tyre, string kPa, string psi, string loadKg, string formula)
    {
        var pressure = psi.Length > 0 ? GaugePressure.FromPoundsPerSquareInch(Number(psi)) : GaugePressure.FromKilopascals(Number(kPa));
        var (marking, dual) = MarkingOf(tyre);
        var rule = LoadPressureRule.For(marking, null)!;

        // The LT rows are held to the table's own last row (3042 lb single, 2778 lb dual), as the reference's formula column is.
        var full = tyre.StartsWith("LT", StringComparison.Ordinal) ? Mass.FromPounds(dual ? 2778 : 3042) : marking.Service.LoadSingle!.Value;
        var law = rule.LoadAt(pressure, full);
        var published = Number(loadKg);
        (Math.Abs(law.Kilograms - published) <= 2.5 || Math.Abs(law.Kilograms / published - 1) <= 0.011).ShouldBeTrue($"{tyre} {pressure}: {law.Kilograms} against {published} kg");

        // The formula column itself, to its printed digits (kg to 0.1; lb to 1).
        var printed = formula.EndsWith(" lb", StringComparison.Ordinal);
        (printed ? law.Pounds : law.Kilograms).ShouldBe(Number(printed ? formula[..^3] : formula), printed ? 1.5 : 0.15);
    }

    [Fact]
    public void No_row_was_lost_on_the_way() => ReadRowsWithFormula.Count.ShouldBe(139 + 14);

    /// <summary>What was read is carried as read, what was computed as computed, and nothing of the list is missing.</summary>
    [Fact]
    public void The_engine_carries_every_row_of_the_list_with_its_status()
    {
        foreach (var row in Table.Rows)
        {
            var carried = LoadInflationTable.Rows.Where(r => r.Tyre == Table.Cell(row, "tyre") && r.System == Table.Cell(row, "system")
                && (Table.Cell(row, "psi") is { Length: > 0 } psi ? Math.Abs(r.Pressure.PoundsPerSquareInch - Number(psi)) < 1e-9 : Math.Abs(r.Pressure.Kilopascals - Number(Table.Cell(row, "kPa"))) < 1e-9)
                && (Table.Cell(row, "load_lb") is { Length: > 0 } lb ? Math.Abs(r.Load.Pounds - Number(lb)) < 1e-9 : Math.Abs(r.Load.Kilograms - Number(Table.Cell(row, "load_kg"))) < 1e-9)).ToList();
            carried.ShouldHaveSingleItem(string.Join(',', row)).Source.Status.ShouldBe(Table.Cell(row, "status") == "read" ? SourceStatus.Read : SourceStatus.Calculated);
        }

        // Five rows more were read in the same two sources: 300 kg at 150 kPa for 80, 545 kg at 250 kPa for 87, and 40, 55 and 70 psi of LT235/85R16.
        LoadInflationTable.Rows.Count.ShouldBe(Table.Rows.Count + 5);
    }

    [Theory]
    [InlineData(80, 150, 300)]
    [InlineData(80, 200, 375)]
    [InlineData(80, 220, 405)]
    [InlineData(80, 250, 450)]
    [InlineData(84, 180, 385)]
    [InlineData(84, 200, 420)]
    [InlineData(84, 230, 470)]
    [InlineData(87, 150, 360)]
    [InlineData(87, 210, 475)]
    [InlineData(87, 250, 545)]
    public void A_published_load_needs_its_published_pressure(int index, double kilopascals, double kilograms)
    {
        // Textbook p. 290 (read). Where the engine holds the row it answers the row; else the law rounded up to 10 kPa.
        var found = LoadPressure.For(Car(index), null, Mass.FromKilograms(kilograms), false, "car", null).ShouldBeOfType<LoadPressure.Found>();
        PressureStep.TenKilopascals.Up(found.Pressure.Pressure).Kilopascals.ShouldBe(kilopascals, 1e-6);
    }

    [Theory]
    [InlineData(35, 1700)]
    [InlineData(40, 1870)]
    [InlineData(45, 2030)]
    [InlineData(50, 2205)]
    [InlineData(55, 2335)]
    [InlineData(60, 2485)]
    [InlineData(65, 2623)]
    [InlineData(70, 2765)]
    [InlineData(75, 2905)]
    [InlineData(80, 3042)]
    public void A_published_light_truck_row_is_answered_as_printed(double psi, double pounds)
    {
        var found = LoadPressure.For(MarkingReader.Read("LT235/85R16 120/116Q LRE").Value, null, Mass.FromPounds(pounds), false, "car", null).ShouldBeOfType<LoadPressure.Found>();
        found.Pressure.Pressure.PoundsPerSquareInch.ShouldBe(psi, 1e-9);
        found.Pressure.Source.Status.ShouldBe(SourceStatus.Read);
    }

    [Fact]
    public void A_car_tyre_on_another_vehicle()
    {
        // 49 CFR 571.110 S4.2.2.2 (from memory): 1521 lb becomes 1382.7 lb.
        var marking = MarkingReader.Read("P225/55R17 95T").Value;
        var capacity = LoadPressure.For(marking, null, Mass.FromKilograms(500), false, "van", RuleSet.UnitedStates).ShouldBeOfType<LoadPressure.Found>().Capacity;
        capacity.Kilograms.ShouldBe(690 / 1.1, 1e-9);
        capacity.Pounds.ShouldBe(1382.7, 0.5);
    }

    private static (Marking Marking, bool Dual) MarkingOf(string tyre) => tyre.StartsWith("LT", StringComparison.Ordinal)
        ? (MarkingReader.Read("LT235/85R16 120/116Q LRE").Value, tyre.Contains("dual", StringComparison.Ordinal))
        : (Car(int.Parse(tyre[(tyre.LastIndexOf(' ') + 1)..], CultureInfo.InvariantCulture)), false);

    private static Marking Car(int index) => MarkingReader.Read($"175/65R14 {index.ToString(CultureInfo.InvariantCulture)}T").Value;

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
