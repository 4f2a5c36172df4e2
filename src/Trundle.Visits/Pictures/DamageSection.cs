using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Pictures;

/// <summary>A tyre cut through on one side, with a damage where it is: bulge, cut, puncture, bare cord, tread that has parted, marks of running low.</summary>
public static class DamageSection
{
    private const string Mark = Svg.Accent;

    // Outside and inside of the carcass from the middle of the tread to the bead, and the depth of the tread.
    private const string Outside = "M30 60H206C236 60 254 66 266 84C288 118 290 158 268 196";
    private const string Inside = "M30 92H196C216 92 228 98 236 112C250 136 250 162 238 190";

    /// <summary>The drawing, 360 by 240.</summary>
    public static string Draw(string id, string title, string words, Damage damage)
    {
        ArgumentNullException.ThrowIfNull(damage);
        var svg = new Svg(id, 360, 240, title, $"A tyre cut through from the middle of its tread to one bead. {words}.");
        svg.Path(Outside + "L238 190C250 162 250 136 236 112C228 98 216 92 196 92H30z", Svg.Rubber, "none").Path(Outside, "none", Svg.Ink, 2).Path(Inside, "none", Svg.Ink, 1.5);

        // The tread's ribs, and the belt and the carcass cords under them.
        foreach (var x in (double[])[30, 84, 138])
        {
            svg.Path($"M{Svg.N(x)} 60V40H{Svg.N(x + 42)}V60", Svg.Rubber, Svg.Ink, 1.5);
        }

        svg.Line(30, 74, 200, 74, Svg.Soft, 1.25, "6 3").Path("M30 83H198C220 83 236 92 246 108C264 138 266 162 252 193", "none", Svg.Soft, 1, "2 3");
        svg.Circle(253, 197, 10, Svg.Card, Svg.Ink, 1.5).Words(282, 204, "bead", 13, "start", Svg.Soft);
        svg.Line(30, 24, 30, 104, Svg.Soft, 0.75, "10 3 2 3").Words(34, 20, "middle of the tread", 13, "start", Svg.Soft);
        Draw(svg, damage);
        return svg.Words(30, 228, words, 13, "start", Svg.Ink, true).End();
    }

    private static void Draw(Svg svg, Damage damage)
    {
        var (x, y) = damage.Place switch
        {
            DamagePlace.Tread => (30 + Math.Min(170, (damage.FromMiddle?.Millimetres ?? 45) * 1.75), 60.0),
            DamagePlace.Shoulder => (250, 68),
            DamagePlace.Sidewall => (283, 140),
            DamagePlace.Bead => (262, 190),
        };
        switch (damage.Kind)
        {
            case DamageKind.Bulge:
                svg.Path("M276 106C318 116 320 160 281 168", Svg.Rubber, Mark, 2.5);
                break;
            case DamageKind.Puncture when damage.Place == DamagePlace.Tread:
                var lean = Math.Tan((damage.Lean?.Radians ?? 0) * -1) * 54;
                svg.Line(x, 38, x + lean, 94, Mark, 3);
                break;
            case DamageKind.Separation:
                svg.Path("M70 70C96 58 124 58 150 70C124 80 96 80 70 70z", Svg.Card, Mark, 2.5);
                break;
            case DamageKind.RunLowMarks:
                svg.Path("M229 112l12 -2M236 124l13 -2M241 138l13 -1M242 152l12 1M241 166l12 3", "none", Mark, 2.5);
                break;
            case DamageKind.Cord:
                svg.Path($"M{Svg.N(x - 12)} {Svg.N(y + 4)}l24 22M{Svg.N(x - 4)} {Svg.N(y - 2)}l22 22M{Svg.N(x - 14)} {Svg.N(y + 14)}l18 16", "none", Mark, 2.5);
                break;
            default:
                // A cut or a hole from outside: as deep as the probe goes, at twelve times.
                svg.Line(x + 3, y, x + 3 - Math.Max(8, 12 * (damage.Depth?.Millimetres ?? 2)), y, Mark, 3);
                break;
        }

        svg.Circle(x, y, 34, "none", Mark, 1, "4 3");
    }
}
