using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Keeping;

/// <summary>The records of tyres that were sold.</summary>
public static class RegistrationRecords
{
    /// <summary>Sold: purchaser, seller and tyres.</summary>
    public const string Sold = "sold";

    /// <summary>Put right, whole.</summary>
    public const string Corrected = "corrected";

    /// <summary>The form was given to the purchaser, 574.8(a)(1)(i).</summary>
    public const string Given = "form given to the purchaser";

    /// <summary>The form was sent to the maker or its registrar, (ii).</summary>
    public const string Sent = "form sent";

    /// <summary>Sent by electronic means, (iii).</summary>
    public const string Electronic = "sent by electronic means";

    /// <summary>Name and address of the purchaser were taken out of all records.</summary>
    public const string PurchaserRemoved = "purchaser removed";

    /// <summary>The three ways in which a registration is done.</summary>
    public static IReadOnlyList<string> Ways { get; } = [Given, Sent, Electronic];
}

/// <summary>Name and address of a purchaser or of the seller.</summary>
/// <param name="Name">Name.</param>
/// <param name="Street">Street, or post box.</param>
/// <param name="City">City.</param>
/// <param name="State">State, or null.</param>
/// <param name="Postcode">Post code.</param>
/// <param name="Other">A purchaser's e-mail address or a seller's number with the maker, or null.</param>
public sealed record Party(string Name, string Street, string City, string? State, string Postcode, string? Other)
{
    /// <summary>The address below the name, in lines.</summary>
    public IReadOnlyList<string> Lines => [Street, string.Join(' ', new[] { City, State, Postcode }.OfType<string>())];

    /// <summary>As it is kept; the last text stands under the key that is given.</summary>
    public JsonObject Json(string other) => new()
    {
        ["name"] = Name, ["street"] = Street, ["city"] = City, ["state"] = State, ["postcode"] = Postcode, [other] = Other,
    };

    /// <summary>Reads one; what a form needs is required.</summary>
    public static Party Read(FileObject o, string other)
    {
        ArgumentNullException.ThrowIfNull(o);
        var party = new Party(Text("name", "give the name"), Text("street", "give the street or post box"), Text("city", "give the city"), o.Text("state"), Text("postcode", "give the post code"), o.Text(other));
        o.Done();
        return party;

        string Text(string key, string what) => o.Require(key, what) ? o.Text(key) ?? "" : "";
    }
}

/// <summary>One tyre that was sold.</summary>
/// <param name="Tin">Its whole TIN, as typed.</param>
/// <param name="Maker">Its maker or brand, or null.</param>
/// <param name="Marking">Its marking, or null.</param>
public sealed record SoldTyre(string Tin, string? Maker, string? Marking)
{
    /// <summary>Reads one. The TIN must be whole: a part, or a date alone, registers nothing.</summary>
    internal static SoldTyre Read(FileObject o, DateOnly? day)
    {
        var typed = o.Require("tin", "give the whole TIN, for example 1AB CDEFHJ 2218") ? o.Text("tin") : null;
        if (typed is not null)
        {
            var read = TinReader.Read(typed, day);
            if (!read.IsRead)
            {
                o.Wrong("tin", read.Problem!.Code, read.Problem.Message);
            }
            else if (read.Value.Form is TinForm.Partial or TinForm.DateOnly)
            {
                o.Wrong("tin", "tin-partial", $"'{NumberText.Shown(typed)}' is only a part of a TIN; a registration needs the whole number, which one side of the tyre bears.");
            }
        }

        var tyre = new SoldTyre(typed ?? "", o.Text("maker"), o.Text("marking"));
        o.Done();
        return tyre;
    }
}

/// <summary>What is written down of a sale.</summary>
/// <param name="Purchaser">Who bought, or null once the name was removed.</param>
/// <param name="Seller">The workshop.</param>
/// <param name="Tyres">The tyres.</param>
public sealed record Sale(Party? Purchaser, Party Seller, IReadOnlyList<SoldTyre> Tyres)
{
    /// <summary>Reads a sale strictly.</summary>
    /// <param name="body">The record's body.</param>
    /// <param name="day">The day of the sale, against which a TIN of the future is refused.</param>
    public static Reading<Sale> Read(string body, DateOnly? day) => FileNode.Parse(body, "body").Then(root =>
    {
        var problems = new List<Problem>();
        var o = new FileObject(root, problems);
        var purchaser = o.Object("purchaser") is { } p ? Party.Read(p, "email") : null;
        var seller = o.Require("seller", "say who sells") && o.Object("seller") is { } s ? Party.Read(s, "number") : null;
        var tyres = o.Objects("tyres").Select(t => SoldTyre.Read(t, day)).ToList();
        if (tyres.Count == 0)
        {
            o.Wrong("tyres", "missing", "No tyre was entered: give the TIN of each tyre that was sold.");
        }

        if (tyres.Count > 20)
        {
            o.Wrong("tyres", "too-many", "At most 20 tyres stand on one registration.");
        }

        o.Done();
        return problems.Count > 0 ? Reading<Sale>.Failed(problems[0]) : Reading<Sale>.Of(new Sale(purchaser, seller!, tyres));
    });

    /// <summary>The sale as it is kept.</summary>
    public string Body() => new JsonObject
    {
        ["purchaser"] = Purchaser?.Json("email"),
        ["seller"] = Seller.Json("number"),
        ["tyres"] = new JsonArray([.. Tyres.Select(t => (JsonNode?)new JsonObject { ["tin"] = t.Tin, ["maker"] = t.Maker, ["marking"] = t.Marking })]),
    }.ToJsonString();
}

/// <summary>A registration as its records leave it.</summary>
/// <param name="Kept">Its number and all its records.</param>
/// <param name="Sale">The newest description.</param>
/// <param name="SoldOn">The day of the sale.</param>
/// <param name="Done">The newest record that says in which way it was registered, or null.</param>
public sealed record Registration(KeptThing Kept, Sale Sale, DateOnly SoldOn, KeptRecord? Done)
{
    private static readonly string[] Columns =
    [
        "registration", "sold", "purchaser name", "purchaser street", "purchaser city", "purchaser state", "purchaser post code", "purchaser e-mail",
        "tin", "tyre maker", "marking", "seller name", "seller street", "seller city", "seller state", "seller post code", "seller number", "state", "state on",
    ];

    /// <summary>How it stands, in words.</summary>
    public string State => Done?.Kind ?? "neither given nor sent yet";

    /// <summary>The registration of a thing's records, or null.</summary>
    public static Registration? Of(KeptThing kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var told = kept.Records.LastOrDefault(r => r.Kind is RegistrationRecords.Sold or RegistrationRecords.Corrected);
        return told is not null && Keeping.Sale.Read(told.Body, null) is { IsRead: true } sale
            ? new Registration(kept, sale.Value, told.On, kept.Records.LastOrDefault(r => RegistrationRecords.Ways.Contains(r.Kind)))
            : null;
    }

    /// <summary>All registrations as CSV, a line for each tyre.</summary>
    public static string Csv(IEnumerable<Registration> registrations) => string.Concat(registrations.SelectMany(r => r.Sale.Tyres.Select(t =>
    {
        var (buyer, seller) = (r.Sale.Purchaser, r.Sale.Seller);
        return CsvLine.Of(
            r.Kept.Number, Day(r.SoldOn), buyer?.Name, buyer?.Street, buyer?.City, buyer?.State, buyer?.Postcode, buyer?.Other,
            t.Tin, t.Maker, t.Marking, seller.Name, seller.Street, seller.City, seller.State, seller.Postcode, seller.Other, r.State, r.Done is { } done ? Day(done.On) : null);
    })).Prepend(CsvLine.Of(Columns)));

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>What the workshop says of itself as a seller of tyres.</summary>
/// <param name="Party">Name, address, and its number with a maker.</param>
/// <param name="Kind">Which seller it is, see <see cref="Kinds"/>.</param>
public sealed record Seller(Party Party, string Kind)
{
    /// <summary>The word of the record that takes it back.</summary>
    public const string NotSubject = "not subject";

    /// <summary>The word of the record.</summary>
    public const string Subject = "subject";

    /// <summary>The kinds of sellers that 49 CFR 574.8 and 574.9 tell apart.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["independent", "owned or controlled by a tyre maker"];

    /// <summary>Reads one strictly.</summary>
    public static Reading<Seller> Read(string body) => FileNode.Parse(body, "body").Then(root =>
    {
        var problems = new List<Problem>();
        var o = new FileObject(root, problems);
        var party = o.Require("party", "say who sells") && o.Object("party") is { } p ? Party.Read(p, "number") : null;
        var kind = o.Require("kind", "say which seller the workshop is") ? o.Word("kind", [.. Kinds.Select((word, i) => (word, i))]) : null;
        o.Done();
        return problems.Count > 0 ? Reading<Seller>.Failed(problems[0]) : Reading<Seller>.Of(new Seller(party!, Kinds[kind!.Value]));
    });

    /// <summary>As it is kept.</summary>
    public string Body() => new JsonObject { ["party"] = Party.Json("number"), ["kind"] = Kind }.ToJsonString();
}
