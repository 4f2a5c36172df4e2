using System.CommandLine;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Operations;

namespace Trundle.Cli;

/// <summary><c>export</c> and <c>import</c>: everything that the workshop owns as a ZIP, and its way back into a new file.</summary>
internal static class ExportCommand
{
    public static Command Export(Option<bool> json)
    {
        var database = new Option<string>("--database") { Description = "The workshop's SQLite file.", Required = true };
        var output = new Option<string>("--output", "-o") { Description = "The ZIP to write.", Required = true };
        var command = new Command("export", "Writes everything that the workshop owns into a ZIP: JSON that comes back whole, CSV for people, photographs. No passwords.") { database, output };
        command.SetAction(async (parse, stop) =>
        {
            var store = RecallCommand.Open(parse.GetRequiredValue(database));
            using var memory = new MemoryStream();
            await store.Export.WriteAsync(memory, stop).ConfigureAwait(false);
            var path = parse.GetRequiredValue(output);
            WholeFile.Write(path, memory.ToArray());
            return Output.Answer(new Answer(false, new JsonObject { ["written"] = path, ["bytes"] = memory.Length }, [$"{path}: {memory.Length} bytes."]), parse.GetValue(json));
        });
        return command;
    }

    public static Command Import(Option<bool> json)
    {
        var file = new Argument<string>("FILE") { Description = "A ZIP that 'export' wrote." };
        var database = new Option<string>("--database") { Description = "The workshop's new SQLite file; it must not be there yet.", Required = true };
        var command = new Command("import", "Brings an export back into a new workshop's file. People are let in anew by a one-time code.") { file, database };
        command.SetAction(parse =>
        {
            var (from, to) = (parse.GetRequiredValue(file), parse.GetRequiredValue(database));
            if (!File.Exists(from))
            {
                throw new InputProblemException(new Problem("FILE", "file-missing", $"There is no file '{NumberText.Shown(from)}'."));
            }

            if (File.Exists(to))
            {
                throw new InputProblemException(new Problem("--database", "file-there", $"'{NumberText.Shown(to)}' is there already; an export comes back into a new file."));
            }

            // Read beside, then given its name: where it cannot be read, nothing is there.
            var beside = $"{to}.new";
            File.Delete(beside);
            try
            {
                using var export = File.OpenRead(from);
                var rows = ServeCommand.Open(beside).Import.Read(export).Match(n => n, problem => throw new InputProblemException(problem.At($"{from}: {problem.Where}")));
                Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
                File.Move(beside, to);
                return Output.Answer(new Answer(false, new JsonObject { ["written"] = to, ["rows"] = rows }, [$"{to}: {rows} rows."]), parse.GetValue(json));
            }
            finally
            {
                Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
                foreach (var left in new[] { beside, $"{beside}-wal", $"{beside}-shm" })
                {
                    File.Delete(left);
                }
            }
        });
        return command;
    }
}
