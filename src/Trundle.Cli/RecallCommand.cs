using System.CommandLine;
using System.Text;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Keeping;

namespace Trundle.Cli;

/// <summary><c>recall --database FILE --plant P --from W --to W</c>: every tyre that was ever recorded and that a recall holds, or may hold.</summary>
internal static class RecallCommand
{
    public static Command Recall(Option<bool> json)
    {
        var database = new Option<string>("--database") { Description = "The workshop's SQLite file.", Required = true };
        var plant = new Option<string?>("--plant") { Description = "The plant's code, or several with commas: 1AB." };
        var code = new Option<string?>("--code") { Description = "The first symbols behind the plant; ? stands for any one: CD?E." };
        var from = new Option<string?>("--from") { Description = "The first week of manufacture: 1025 is week 10 of 2025; or 10/1998." };
        var to = new Option<string?>("--to") { Description = "The last week of manufacture." };
        var csv = new Option<string?>("--csv") { Description = "A CSV file to write the tyres into as well." };
        var command = new Command("recall", "Every tyre that was ever recorded and that a recall's range of TINs holds, or may hold; status 1 where there is one.") { database, plant, code, from, to, csv };
        command.SetAction(parse =>
        {
            var range = TinRange.Read(parse.GetValue(plant), parse.GetValue(code), parse.GetValue(from), parse.GetValue(to))
                .Match(r => r, problem => throw new InputProblemException(problem.At($"--{problem.Where}")));
            var answer = RecallAnswer.Of(range, Open(parse.GetRequiredValue(database)).Tyres.All());
            if (parse.GetValue(csv) is { } path)
            {
                if (string.IsNullOrWhiteSpace(path))
                {
                    throw new InputProblemException(new Problem("--csv", "empty", "Nothing was given where the CSV is to be written; name a file, for example recall.csv."));
                }

                WholeFile.Write(path, Encoding.UTF8.GetBytes(answer.Csv()));
            }

            return Output.Answer(answer.Answer(), parse.GetValue(json));
        });
        return command;
    }

    /// <summary>A workshop's file that is there; none is made.</summary>
    internal static WorkshopStore Open(string path)
    {
        if (!File.Exists(path))
        {
            throw new InputProblemException(new Problem("--database", "file-missing", $"There is no workshop's file '{NumberText.Shown(path)}'."));
        }

        return ServeCommand.Open(path);
    }
}
