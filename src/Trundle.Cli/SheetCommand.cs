using System.CommandLine;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Sheets;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Words;

namespace Trundle.Cli;

/// <summary><c>visit sheet FILE -o OUT.pdf</c>: the paper of a visit.</summary>
internal static class SheetCommand
{
    public static Command Sheet(Option<bool> json)
    {
        var file = new Argument<string>("FILE") { Description = "A visit's JSON file, or - for standard input." };
        var output = new Option<string>("-o", "--output") { Description = "The PDF to write; an older one is replaced only when the new one is whole.", Required = true };
        var paper = new Option<string>("--paper") { Description = "a4 or letter; without it the paper of the locale." };
        var locale = new Option<string>("--locale") { Description = "In whose texts and on whose paper: en-GB (the default, A4) or en-US (Letter).", DefaultValueFactory = _ => Texts.Source };
        var reader = new Option<string>("--for") { Description = "customer (the default): one page; or file: everything.", DefaultValueFactory = _ => "customer" };
        var rules = new Option<string?>("--rules") { Description = "Whose rules: us, uk or eu; wins over the file." };
        var shopRules = new Option<string?>(CheckAnswer.ShopRulesOption.Name) { Description = CheckAnswer.ShopRulesOption.About };
        var photos = new Option<string?>("--photos") { Description = "A folder with the visit's photographs, each called as in the file, with .jpg or .png behind it; they are printed on the file's sheet." };
        var command = new Command("sheet", "Writes a visit's sheet as a PDF, for the customer or for the file.") { file, output, locale, paper, reader, rules, shopRules, photos };
        command.SetAction(parse =>
        {
            var spoken = Locales.Of(parse.GetValue(locale)) ?? throw Unknown("--locale", parse.GetValue(locale), ChoiceText.Of(Locales.All));
            var order = new SheetOrder(
                SheetWords.ReaderOf(parse.GetValue(reader)) ?? throw Unknown("--for", parse.GetValue(reader), SheetWords.Readers),
                parse.GetValue(paper) is not { } chosenPaper ? SheetLocale.Paper(spoken) : SheetWords.PaperOf(chosenPaper) ?? throw Unknown("--paper", chosenPaper, SheetWords.Papers))
            {
                Texts = SheetLocale.Of(spoken),
            };
            if (string.IsNullOrWhiteSpace(parse.GetRequiredValue(output)))
            {
                throw new InputProblemException(new Problem("--output", "empty", "Nothing was given where the PDF is to be written; name a file, for example sheet.pdf."));
            }

            var body = FileText.Read(parse.GetRequiredValue(file));
            if (parse.GetValue(rules) is { } chosen)
            {
                body = body.With("rules", FileNode.From(new JsonObject { ["value"] = chosen }).Member("value")!);
            }

            if (parse.GetValue(shopRules) is { } own)
            {
                var file = FileText.Read(own);
                body = CheckAnswer.ShopRulesOption.Refuses!(file) is { } wrong ? throw new InputProblemException(wrong) : body.With(CheckAnswer.ShopRulesOption.Key, file);
            }

            if (parse.GetValue(photos) is { } folder)
            {
                order = order with { Photos = PhotoFolder.Read(folder, body) };
            }

            return VisitSheet.Write(body, order).Match(
                sheet =>
                {
                    var path = parse.GetRequiredValue(output);
                    WholeFile.Write(path, sheet.Pdf);
                    return Output.Answer(Said(sheet, path, order), parse.GetValue(json));
                },
                problem => Output.Wrong(problem, parse.GetValue(json)));
        });
        return command;
    }

    private static Answer Said(WrittenSheet sheet, string path, SheetOrder order) => new(
        sheet.No,
        new JsonObject
        {
            ["written"] = path,
            ["pages"] = sheet.Pages,
            ["for"] = order.Reader == SheetReader.Customer ? "customer" : "file",
            ["paper"] = order.Paper == PaperSize.A4 ? "a4" : "letter",
            ["worst"] = sheet.Worst,
            ["mayLeave"] = sheet.MayLeave,
        },
        [
            $"{path}: {sheet.Pages.ToString(System.Globalization.CultureInfo.InvariantCulture)} {(sheet.Pages == 1 ? "page" : "pages")}.",
            sheet.MayLeave ? "Nothing stops hand-back." : "Hand-back is stopped; the sheet says by what.",
        ]);

    private static InputProblemException Unknown(string option, string? text, string known) =>
        new(new Problem(option, "word-unknown", $"'{NumberText.Shown(text ?? "")}' is not a word here; write {known}."));
}
