using System.Diagnostics;
using System.Text.Json.Nodes;
using Trundle.Visits.Operations;

namespace Trundle.Cli.Tests;

/// <summary>The command as a process, as a user or another program calls it.</summary>
internal static class Command
{
    public static string Samples { get; } = Path.Combine(AppContext.BaseDirectory, "samples");

    /// <summary>Each sample that is a command's file, with that command's words.</summary>
    public static IEnumerable<(string[] Words, string File)> SamplesByCommand()
    {
        foreach (var file in Directory.GetFiles(Samples, "*.json").Order(StringComparer.Ordinal))
        {
            var name = Path.GetFileNameWithoutExtension(file);
            var words = OperationList.All.Select(o => o.Name).Where(o => name.StartsWith(o.Replace(' ', '-'), StringComparison.Ordinal)).MaxBy(o => o.Length)
                ?? (name.StartsWith("visit-", StringComparison.Ordinal) ? "visit check" : null);
            if (words is not null)
            {
                yield return (words.Split(' '), file);
            }
        }
    }

    public sealed record Said(int Status, string Output, string Messages)
    {
        /// <summary>Standard output as the one JSON object that it must be.</summary>
        public JsonObject Json => JsonNode.Parse(Output)!.AsObject();
    }

    public static Said Run(params string[] arguments) => RunWith("", [], arguments);

    public static Said RunWith(string input, (string Name, string Value)[] environment, params string[] arguments) =>
        RunProgram(Path.Combine(AppContext.BaseDirectory, "trundle"), input, environment, arguments);

    public static Said RunProgram(string program, string input, (string Name, string Value)[] environment, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var messages = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit(60_000).ShouldBeTrue("the command hangs");
        return new Said(process.ExitCode, output.Result, messages.Result);
    }
}
