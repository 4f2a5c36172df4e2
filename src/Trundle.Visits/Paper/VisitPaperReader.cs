using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Paper;

/// <summary>Reads the paper of a visit out of its <c>work</c> part.</summary>
public static class VisitPaperReader
{
    private const int MostUsed = 1000;

    /// <summary>Reads the keys <c>agreed</c>, <c>agreement</c>, <c>declined</c>, <c>lockingKey</c>, <c>seen</c>, <c>stock</c> and <c>scrap</c>.</summary>
    public static VisitPaper Read(FileObject work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var agreement = work.Object("agreement");
        var paper = new VisitPaper
        {
            Agreed = work.Texts("agreed"),
            AgreementSigned = agreement?.Text("signed"),
            AgreementAt = agreement?.Text("at"),
            Declined = [.. work.Objects("declined").Select(ReadDeclined).OfType<DeclinedWork>()],
            LockingKey = work.Object("lockingKey") is { } key ? ReadKey(key) : null,
            Seen = [.. work.Objects("seen").Select(ReadSeen).OfType<SeenPart>()],
            Stock = [.. work.Objects("stock").Select(ReadStock).OfType<StockUsed>()],
            Scrap = work.Object("scrap") is { } scrap ? ReadScrap(scrap) : ScrapOut.Nothing,
        };
        agreement?.Done();
        return paper;
    }

    private static LockingKey ReadKey(FileObject o)
    {
        var key = new LockingKey(o.Text("in"), o.Text("out"));
        o.Done();
        return key;
    }

    private static DeclinedWork? ReadDeclined(FileObject o)
    {
        var what = o.Require("what", "say which work was declined") ? o.Text("what") : null;
        var risk = o.Require("risk", "say in plain words what may come of it") ? o.Text("risk") : null;
        var signed = o.Text("signed");
        var at = o.Text("at");
        o.Done();
        return what is null || risk is null ? null : new DeclinedWork(what, risk, signed, at);
    }

    private static SeenPart? ReadSeen(FileObject o)
    {
        var part = o.Require("part", "say which part, for example brake-pad") ? o.Word("part", [.. SeenKind.All.Select((k, i) => (k.Key, i))]) : null;
        var position = o.Reference("position", Place);
        var kind = part is { } index ? SeenKind.All[index] : null;
        var thickness = o.Quantity<Length>("thickness", "mm", Length.FromMillimetres(0), Length.FromMillimetres(200));
        var limit = o.Quantity<Length>("makerLimit", "mm", Length.FromMillimetres(0), Length.FromMillimetres(200));
        if (kind is { Measured: false } && (o.Has("thickness") || o.Has("makerLimit")))
        {
            o.Wrong(o.Has("thickness") ? "thickness" : "makerLimit", "not-measured", $"A {kind.Name} has no thickness here; say in words what was seen.");
        }

        var seen = kind is null ? null : new SeenPart(position, kind, o.Text("words"), thickness, limit, o.Text("lookedAtBy"), o.Text("by"), o.Word("role", VisitWorkReader.RoleChoices));
        if (seen is null)
        {
            o.Knows("words", "lookedAtBy", "by", "role");
        }

        o.Done();
        return seen;
    }

    /// <summary>A wheel's position, or an axle as <c>axle 1</c>.</summary>
    private static Reading<string> Place(string text)
    {
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts is ["axle", var n] && int.TryParse(n, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var axle) && axle is >= 1 and <= Position.MostAxles
            ? Reading<string>.Of(FormattableString.Invariant($"axle {axle}"))
            : Position.Read(text).Then(p => Reading<string>.Of(p.ToString()));
    }

    /// <summary>Reads one item of <c>stock</c>.</summary>
    public static StockUsed? ReadStock(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var kind = o.Require("kind", "say what it is, for example valve") ? o.Word("kind", [.. StockName.All.Select(k => (k.Word, k.Kind))]) : null;
        var item = o.Text("item");
        var mass = o.Quantity<Mass>("mass", "g", Mass.FromGrams(0.1), Mass.FromGrams(2000));
        var count = o.Has("count") ? o.Whole("count", 1, MostUsed) : 1;
        if (kind is { } k && (k.IsWeight() ? mass is null && !o.Has("mass") : item is null))
        {
            o.Require(k.IsWeight() ? "mass" : "item", k.IsWeight() ? "say how heavy one is" : "say which, by its name on the shop's list");
        }

        o.Done();
        return kind is { } what && count is { } n && (what.IsWeight() ? mass is not null : item is not null) ? new StockUsed(what, item, mass, n) : null;
    }

    private static ScrapOut ReadScrap(FileObject o)
    {
        var tyres = o.Objects("tyres").Select(tyre =>
        {
            var read = new ScrapTyre(tyre.Text("tin"), tyre.Text("words"));
            tyre.Done();
            return read;
        }).Where(t => t.Tin is not null || t.Words is not null).ToList();
        var scrap = new ScrapOut(tyres, o.Quantity<Mass>("leadWeights", "g", Mass.FromGrams(0), Mass.FromKilograms(50)), o.Text("note"));
        o.Done();
        return scrap;
    }
}
