using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using Trundle.Web.Office.Forms;

namespace Trundle.Web.Office.Registrations;

/// <summary>The forms about tyres that were sold.</summary>
internal static class RegistrationForms
{
    /// <summary>Rows for tyres: four on the vehicle, a spare, and one more.</summary>
    public const int Rows = 6;

    public const string Done = "done";

    /// <summary>What the workshop says of itself.</summary>
    public static OfficeForm OfSeller(Seller? seller) => new(
        "seller",
        [.. Address("party", "The workshop’s name", ("number", "Its number with the maker", "Where the maker gave one")), new FormField("kind", "The workshop is") { Choices = [.. Seller.Kinds.Select(k => (k, k))] }],
        Standing([.. Told("party", seller?.Party, "number"), ("kind", seller?.Kind ?? Seller.Kinds[0])]),
        null);

    /// <summary>A sale: a new one, with the tyres that a visit put on, or one to be put right.</summary>
    public static OfficeForm OfSale(string key, Sale? sale, IReadOnlyList<SoldTyre> tyres, DateOnly on) => new(
        key,
        [
            new("on", "Sold on") { IsDay = true },
            .. Address("purchaser", "Purchaser’s name", ("email", "E-mail address", "Where the purchaser gives one")),
            .. Enumerable.Range(0, Math.Max(Rows, tyres.Count)).SelectMany(i => new FormField[]
            {
                new(At(i, "tin"), "TIN", i == 0 ? "The whole number: DOT 1AB CDEFHJ 2218" : ""),
                new(At(i, "maker"), "Maker or brand"),
                new(At(i, "marking"), "Marking"),
            }.Select(f => f with { Group = string.Create(CultureInfo.InvariantCulture, $"Tyre {i + 1}") })),
        ],
        Standing([("on", Day(on)), .. Told("purchaser", sale?.Purchaser, "email"), .. tyres.SelectMany((t, i) => new[] { (At(i, "tin"), t.Tin), (At(i, "maker"), t.Maker), (At(i, "marking"), (string?)t.Marking) })]),
        null);

    /// <summary>In which way it was registered.</summary>
    public static OfficeForm Way(DateOnly today) => new(
        Done,
        [new("on", "On") { IsDay = true }, new("way", "What was done") { Choices = [.. RegistrationRecords.Ways.Select(w => (w, w))] }],
        Standing([("on", Day(today)), ("way", RegistrationRecords.Given)]),
        null);

    /// <summary>The body of a seller's form.</summary>
    public static string SellerBody(OfficeForm form)
    {
        var body = new JsonObject();
        foreach (var field in form.Fields.Where(f => form[f.Name].Length > 0))
        {
            FormRows.Put(body, field.Name, form[field.Name]);
        }

        return body.ToJsonString();
    }

    /// <summary>The body of a sale's form.</summary>
    public static string SaleBody(OfficeForm form, Party seller)
    {
        var body = new JsonObject { ["seller"] = seller.Json("number") };
        foreach (var (name, place) in Closed(form))
        {
            FormRows.Put(body, place, form[name]);
        }

        return body.ToJsonString();
    }

    /// <summary>The form with a problem, said at the row that it is about.</summary>
    public static OfficeForm With(OfficeForm form, Problem problem) =>
        form with { Problem = Closed(form).FirstOrDefault(n => n.Value == problem.Where).Key is { } name ? problem.At(name) : problem.Where == "tyres" ? problem.At(At(0, "tin")) : problem };

    /// <summary>The tyres that a visit put on, as far as they were entered.</summary>
    public static IReadOnlyList<SoldTyre> Of(VisitFields fields) =>
    [
        .. fields.Under("work.renewed").Select(e => e.Field.Split('.')[2]).Distinct()
            .Select(p => new SoldTyre(fields[$"work.renewed.{p}.tyre.tin"] ?? "", null, fields[$"work.renewed.{p}.tyre.marking"])),
    ];

    /// <summary>By when a registration is to be sent, where it is not given to the purchaser, and where that comes from.</summary>
    public static (DateOnly By, Source Source) SendBy(Registration registration, Seller seller)
    {
        var figure = Figures.Of(seller.Kind == Seller.Kinds[0] ? "registration.send-independent" : "registration.send-owned");
        return (registration.SoldOn.AddDays((int)figure.Value), figure.Source);
    }

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IReadOnlyDictionary<string, string> Closed(OfficeForm form) => FormRows.Closed(form.Fields.Where(f => f.Name != "on" && form[f.Name].Length > 0).Select(f => f.Name));

    private static IEnumerable<FormField> Address(string at, string name, (string Key, string Label, string Hint) other) =>
    [
        new($"{at}.name", name), new($"{at}.street", "Street"), new($"{at}.city", "City"), new($"{at}.state", "State"), new($"{at}.postcode", "Post code"), new($"{at}.{other.Key}", other.Label, other.Hint),
    ];

    private static IEnumerable<(string, string?)> Told(string at, Party? party, string other) =>
    [
        ($"{at}.name", party?.Name), ($"{at}.street", party?.Street), ($"{at}.city", party?.City), ($"{at}.state", party?.State), ($"{at}.postcode", party?.Postcode), ($"{at}.{other}", party?.Other),
    ];

    private static string At(int index, string leaf) => string.Create(CultureInfo.InvariantCulture, $"tyres[{index}].{leaf}");

    private static Dictionary<string, string> Standing(IEnumerable<(string Name, string? Text)> texts) =>
        texts.Where(t => t.Text is not null).ToDictionary(t => t.Name, t => t.Text!, StringComparer.Ordinal);
}
