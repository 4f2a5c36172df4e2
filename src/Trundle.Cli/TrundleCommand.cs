using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Cli;

/// <summary>The command line: every operation as a subcommand, and those that need the machine (serve, sheet) where they are carried.</summary>
internal static class TrundleCommand
{
    private static readonly Option<bool> Json = new("--json") { Description = "Print one JSON object on standard output and nothing else there.", Recursive = true };

    /// <summary>Runs one command line.</summary>
    /// <param name="args">The words after the command's own name.</param>
    /// <param name="machine">Adds the commands that need the machine, where this program carries them.</param>
    /// <param name="handOver">What does the rest, help and mistakes among it, where this program carries the operations alone; null where it carries all.</param>
    /// <returns>The exit status: 0 done, 1 the answer is 'no', 2 wrong input, 3 a fault inside.</returns>
    public static int Run(string[] args, Action<RootCommand, Option<bool>>? machine = null, Func<string[], int>? handOver = null)
    {
        var asJson = args.Contains("--json", StringComparer.Ordinal);
        try
        {
            var root = Root();
            machine?.Invoke(root, Json);
            var parse = root.Parse(args);
            if (handOver is not null && (parse.Errors.Count > 0 || parse.CommandResult.Command.Action != parse.Action))
            {
                return handOver(args);
            }

            if (parse.Errors.Count > 0)
            {
                return Output.Wrong(new Problem("command line", "command-line", $"{Told(parse)} See 'trundle {Words(parse)}--help'."), asJson);
            }

            return parse.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (InputProblemException e)
        {
            return Output.Wrong(e.Problem, asJson);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Output.Wrong(new Problem("file", "file-unusable", e.Message), asJson);
        }
#pragma warning disable CA1031 // The last line of defence: no stack trace ever reaches a user.
        catch (Exception e)
        {
            return Output.Fault(e, asJson);
        }
#pragma warning restore CA1031
    }

    /// <summary>What is wrong with the line. A word that is no command is named, and what can stand there instead.</summary>
    private static string Told(ParseResult parse)
    {
        var command = parse.CommandResult.Command;
        if (command.Subcommands.Count == 0)
        {
            return parse.Errors[0].Message;
        }

        var word = parse.UnmatchedTokens.FirstOrDefault(t => !t.StartsWith('-'));
        return $"{(word is null ? "A command is missing" : $"'{NumberText.Shown(word)}' is not a command here")}; there are {ChoiceText.Of(command.Subcommands.Select(c => c.Name), "and")}.";
    }

    private static string Words(ParseResult parse) =>
        parse.CommandResult.Command is RootCommand ? "" : string.Join(' ', Path(parse.CommandResult)) + " ";

    private static IEnumerable<string> Path(CommandResult result)
    {
        var names = new List<string>();
        for (SymbolResult? at = result; at is CommandResult { Command: not RootCommand } command; at = at.Parent)
        {
            names.Insert(0, command.Command.Name);
        }

        return names;
    }

    private static RootCommand Root()
    {
        var root = new RootCommand("Trundle: wheels and tyres, from arrival to hand-back. Quantities carry their unit, for example \"2.3 bar\".") { Json };
        foreach (var operation in OperationList.All)
        {
            var parent = (Command)root;
            var words = operation.Name.Split(' ');
            foreach (var word in words[..^1])
            {
                parent = Group(parent, word);
            }

            parent.Subcommands.Add(OperationCommand(words[^1], operation));
        }

        return root;
    }

    /// <summary>The subcommand of a name, made where it is not there yet.</summary>
    internal static Command Group(Command parent, string name)
    {
        var found = parent.Subcommands.FirstOrDefault(c => c.Name == name);
        if (found is null)
        {
            found = new Command(name, $"All that belongs to {name}.");
            parent.Subcommands.Add(found);
        }

        return found;
    }

    private static Command OperationCommand(string name, Operation operation)
    {
        var command = new Command(name, operation.About);
        Argument<string>? argument = null;
        if (operation.TakesFile || operation.ArgumentKey is not null)
        {
            argument = new Argument<string>(operation.TakesFile ? "FILE" : operation.ArgumentKey!.ToUpperInvariant())
            {
                Description = operation.TakesRecordings ? "A JSON file or a recording (CSV, WAV), or - for standard input." : operation.TakesFile ? "A JSON file, or - for standard input." : $"The {operation.ArgumentKey}.",
            };
            command.Arguments.Add(argument);
        }

        var options = operation.Options.Select(o => new Option<string?>(o.Name) { Description = o.About }).ToArray();
        foreach (var option in options)
        {
            command.Options.Add(option);
        }

        command.SetAction(parse =>
        {
            var body = operation.TakesFile
                ? operation.TakesRecordings ? FileText.ReadWithRecordings(parse.GetRequiredValue(argument!)) : FileText.Read(parse.GetRequiredValue(argument!))
                : FileNode.From(operation.ArgumentKey is null ? [] : new JsonObject { [operation.ArgumentKey] = parse.GetRequiredValue(argument!) });
            for (var i = 0; i < options.Length; i++)
            {
                if (parse.GetValue(options[i]) is { } text)
                {
                    if (string.IsNullOrWhiteSpace(text))
                    {
                        throw new InputProblemException(new Problem(options[i].Name, "empty", $"Nothing was given for it; give a value or leave it out. {options[i].Description}"));
                    }

                    body = body.With(operation.Options[i].Key, ValueOf(operation.Options[i], text));
                }
            }

            var answer = operation.Run(body);
            return answer.Match(
                a => Output.Answer(a, parse.GetValue(Json)),
                problem => Output.Wrong(problem, parse.GetValue(Json)));
        });
        return command;
    }

    /// <summary>What an option puts into the body.</summary>
    private static FileNode ValueOf(OperationOption option, string text)
    {
        if (option.IsFile)
        {
            var file = FileText.Read(text);
            return option.Refuses?.Invoke(file) is { } problem ? throw new InputProblemException(problem) : file;
        }

        JsonNode value = option.IsList
            ? new JsonArray([.. text.Split(',', StringSplitOptions.TrimEntries).Select(t => (JsonNode?)JsonValue.Create(t))])
            : JsonValue.Create(text);
        return FileNode.From(new JsonObject { ["value"] = value }).Member("value")!;
    }
}
