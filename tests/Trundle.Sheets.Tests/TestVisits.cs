using System.Text.Json.Nodes;
using Trundle.Sheets;
using Trundle.Visits.Files;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>Invented visits, and their sheets as read back from the PDF.</summary>
internal static class TestVisits
{
    /// <summary>The sample visit, to be changed.</summary>
    public static JsonObject Hatchback() => (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-blue-hatchback.json")))!;

    /// <summary>The sample visit with all its paper, to be changed.</summary>
    public static JsonObject Saloon() => (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-plum-saloon.json")))!;

    /// <summary>The photograph that <see cref="Saloon"/> names, and a drawing of 4 by 3 pixels in its place.</summary>
    public static Dictionary<Guid, byte[]> SaloonPhotos() => new() { [Guid.Parse("0b9f6c1e-3a52-4d0e-9d0c-2f6a55e2d731")] = Convert.FromBase64String(Picture) };

    private const string Picture = "iVBORw0KGgoAAAANSUhEUgAAAAQAAAADCAIAAAA7ljmRAAAAK0lEQVR4nA3HMQEAMAwCsMpBEzc3IlCCMMRs+XIgRJUddzBk1Z1/AkVNlz01MhFZexe33wAAAABJRU5ErkJggg==";

    /// <summary>The sample visit with nothing to stop it: no spare to look at.</summary>
    public static JsonObject Finished()
    {
        var visit = Hatchback();
        ((JsonObject)visit["vehicle"]!).Remove("spare");
        return visit;
    }

    /// <summary>A lorry with duals on its rear axle and ten nuts a wheel, just arrived.</summary>
    public static JsonObject Lorry()
    {
        var axle = JsonNode.Parse("""{"steered":true,"placard":{"size":"275/70 R22.5 148/145M","cold":"850 kPa"},"fixings":{"count":10,"kind":"nut","thread":"M22x1.5","propertyClass":"10.9","torque":"600 N·m","seat":"flat","condition":"oiled"}}""")!;
        var dual = axle.DeepClone();
        dual["steered"] = false;
        dual["driven"] = true;
        dual["dual"] = true;
        return new JsonObject
        {
            ["rules"] = "uk",
            ["date"] = "2026-03-14",
            ["vehicle"] = new JsonObject { ["name"] = "Grey lorry, DEMO 22", ["class"] = "goods over 3500 kg", ["odometer"] = "310000 km", ["axles"] = new JsonArray(axle, dual) },
            ["fitted"] = new JsonArray([.. new[] { "1L", "1R", "2Li", "2Lo", "2Ri", "2Ro" }.Select(p => (JsonNode?)JsonNode.Parse($$$"""
                {"position":"{{{p}}}","tyre":{"marking":"275/70 R22.5 148/145M"},"tread":{"inner":["9 mm"],"centre":["9.5 mm"],"outer":["9 mm"]},"pressure":{"value":"850 kPa"}}
                """))]),
        };
    }

    public static WrittenSheet Write(JsonObject visit, SheetReader reader = SheetReader.Customer, PaperSize paper = PaperSize.A4) =>
        Write(visit, new SheetOrder(reader, paper));

    public static WrittenSheet Write(JsonObject visit, SheetOrder order) =>
        VisitSheet.Write(FileNode.From(visit), order).Match(sheet => sheet, problem => throw new InvalidOperationException($"{problem.Where}: {problem.Message}"));

    /// <summary>The words of each page in the order in which they were written, without any blanks: a line's end is no word of the sheet's.</summary>
    public static IReadOnlyList<string> Pages(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(p => Bare(p.Text))];
    }

    /// <summary>The words of a whole sheet without any blanks.</summary>
    public static string Text(byte[] pdf) => string.Concat(Pages(pdf));

    /// <summary>Holds these words, wherever lines break.</summary>
    public static void ShouldHold(this string text, string words) => text.ShouldContain(Bare(words), Case.Sensitive);

    /// <summary>Does not hold these words.</summary>
    public static void ShouldNotHold(this string text, string words) => text.ShouldNotContain(Bare(words), Case.Sensitive);

    /// <summary>A text without any blanks.</summary>
    public static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
