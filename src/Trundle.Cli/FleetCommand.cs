using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Operations;

namespace Trundle.Cli;

/// <summary><c>fleet LIST.csv --database FILE --by NAME</c>: takes a fleet's list into a workshop's file, whole or not at all.</summary>
internal static class FleetCommand
{
    public static Command Fleet(Option<bool> json)
    {
        var file = new Argument<string>("LIST") { Description = "A CSV: the first line names the columns, one of them 'unit'." };
        var database = new Option<string>("--database") { Description = "The workshop's SQLite file.", Required = true };
        var by = new Option<string>("--by") { Description = "Who takes it in: one of the people of the workshop.", Required = true };
        var command = new Command("fleet", "Takes a fleet's list of vehicles into a workshop's file, so that a visit begins with what is known. A list with one wrong line is taken not at all.") { file, database, by };
        command.SetAction(parse =>
        {
            var from = parse.GetRequiredValue(file);
            if (!File.Exists(from))
            {
                throw new InputProblemException(new Problem("LIST", "file-missing", $"There is no file '{NumberText.Shown(from)}'."));
            }

            var store = RecallCommand.Open(parse.GetRequiredValue(database));
            var name = parse.GetRequiredValue(by);
            var person = store.People.All().FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase))
                ?? throw new InputProblemException(new Problem("--by", "person-unknown", $"'{NumberText.Shown(name)}' is none of the people of this workshop."));
            var (vehicles, problems) = FleetFile.Read(File.ReadAllBytes(from));
            if (problems.Count > 0)
            {
                var more = problems.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" There {(problems.Count == 2 ? "is 1 more thing" : $"are {problems.Count - 1} more things")} to put right; nothing was taken in.");
                throw new InputProblemException(new Problem($"{from}: {problems[0].Where}", problems[0].Code, problems[0].Message + more));
            }

            var taken = store.Fleet.Take(vehicles, DateOnly.FromDateTime(DateTime.Now), new Recorder(person.Name, person.Role, DateTimeOffset.UtcNow));
            return Output.Answer(new Answer(
                false,
                new JsonObject { ["added"] = taken.Added, ["changed"] = taken.Changed, ["same"] = taken.Same, ["notNamed"] = taken.NotNamed },
                [string.Create(CultureInfo.InvariantCulture, $"{taken.Added} added, {taken.Changed} changed, {taken.Same} as before; {taken.NotNamed} on the list that this file does not name stay.")]), parse.GetValue(json));
        });
        return command;
    }
}
