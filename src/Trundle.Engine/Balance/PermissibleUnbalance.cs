using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>A balance quality grade: the permissible speed of the centre of mass about the axis. G 16 is 16 mm/s.</summary>
public readonly record struct BalanceGrade
{
    private static readonly double[] Series =
        [.. Embedded().Rows.Select(row => double.Parse(row[0], CultureInfo.InvariantCulture))];

    private BalanceGrade(double millimetresPerSecond) => Product = Speed.FromMetresPerSecond(millimetresPerSecond / 1000);

    /// <summary>Permissible eccentricity times angular speed.</summary>
    public Speed Product { get; }

    internal double MillimetresPerSecond => Product.MetresPerSecond * 1000;

    /// <summary>True where the grade is one of the published series.</summary>
    public bool IsListed
    {
        get
        {
            var g = MillimetresPerSecond;
            return Series.Any(s => Math.Abs(s - g) <= 1e-9 * s);
        }
    }

    /// <summary>Reads a grade such as <c>G 16</c>, <c>G6.3</c> or <c>40</c>.</summary>
    /// <returns>The grade, above 0 and at most 4000 mm/s, or one problem.</returns>
    /// <source>ISO 21940-11 Table 1 (from memory): grades are named by G and mm/s</source>
    public static Reading<BalanceGrade> Read(string? text)
    {
        var typed = (text ?? "").Trim();
        var number = typed.Length > 0 && typed[0] is 'G' or 'g' ? typed[1..].Trim() : typed;
        var read = NumberText.Read(number);
        if (!read.IsRead)
        {
            return Reading<BalanceGrade>.Failed("grade-unreadable", $"'{NumberText.Shown(typed)}' is not a balance quality grade; write G and a number of mm/s, for example \"G 16\" or \"40\".");
        }

        return read.Value is > 0 and <= 4000
            ? Reading<BalanceGrade>.Of(new BalanceGrade(read.Value))
            : Reading<BalanceGrade>.Failed("out-of-range", $"'{NumberText.Shown(typed)}' is no balance quality grade; they lie above 0 and go up to G 4000, for example \"G 16\".");
    }

    /// <summary>As people write it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"G {MillimetresPerSecond:G6}");

    private static CsvTable Embedded() => CsvTable.Embedded("balance_grades.csv");
}

/// <summary>How much unbalance may be left, by grade, mass and speed.</summary>
public static class PermissibleUnbalance
{
    /// <summary>
    /// The permissible residual unbalance of the whole assembly: U = G·m/ω, which is 9549.30·G·m/n in g·mm with kg and r/min.
    /// </summary>
    /// <param name="grade">Balance quality grade.</param>
    /// <param name="mass">The whole assembly, above nothing.</param>
    /// <param name="speed">Greatest speed of turning in service, above nothing.</param>
    /// <source>ISO 21940-11 (from memory); formula checked against R. Kelm, W. Kelm, D. Pavelek, Rotor Balancing Tutorial, 2016, pp. 3 and 9</source>
    public static Unbalance Of(BalanceGrade grade, Mass mass, RotationalSpeed speed) =>
        Unbalance.FromKilogramMetres(grade.Product.MetresPerSecond * mass.Kilograms / speed.RadiansPerSecond);

    /// <summary>The permissible eccentricity of the centre of mass: e = G/ω.</summary>
    /// <source>ISO 21940-11 (from memory)</source>
    public static Length Eccentricity(BalanceGrade grade, RotationalSpeed speed) =>
        Length.FromMetres(grade.Product.MetresPerSecond / speed.RadiansPerSecond);

    /// <summary>Half for each of two planes: a wheel's centre of mass lies between its planes, near their middle.</summary>
    /// <source>ISO 21940-11 (from memory): half and half where the centre of mass lies about mid-way</source>
    public static Unbalance PerPlane(Unbalance whole) => whole / 2;

    /// <summary>
    /// The permissible unbalance of each of two planes by the centre of mass's distances, the nearer plane taking more.
    /// </summary>
    /// <param name="whole">Permissible unbalance of the whole.</param>
    /// <param name="toFirst">From the centre of mass to the first plane.</param>
    /// <param name="toSecond">From the centre of mass to the second plane.</param>
    /// <returns>Each plane's share, each kept between 30 % and 70 % of the whole.</returns>
    /// <source>ISO 1940-1 as quoted in a tool-balancing handbook (second-hand): U_A = U·L_B/L, U_B = U·L_A/L, neither under 30 % nor over 70 %</source>
    public static (Unbalance First, Unbalance Second) Shares(Unbalance whole, Length toFirst, Length toSecond)
    {
        var first = Math.Clamp(toSecond / (toFirst + toSecond), 0.3, 0.7);
        return (whole * first, whole * (1 - first));
    }

    /// <summary>How fast a wheel turns at a road speed.</summary>
    /// <param name="road">Road speed.</param>
    /// <param name="rollingCircumference">Distance rolled in one turn, above nothing.</param>
    /// <source>common practice: turns are distance over rolling circumference</source>
    public static RotationalSpeed TurningAt(Speed road, Length rollingCircumference) =>
        RotationalSpeed.FromHertz(road.MetresPerSecond / rollingCircumference.Metres);
}
