using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Operations;

namespace Trundle.Cli;

/// <summary>What reaches the user: an answer, one clear message, or the word that something inside is broken; with the exit status of each.</summary>
internal static class Output
{
    /// <summary>Prints an answer; 0, or 1 where the answer is 'no'.</summary>
    public static int Answer(Answer answer, bool json)
    {
        if (json)
        {
            Write(answer.Body);
        }
        else
        {
            foreach (var line in answer.ForPeople)
            {
                Console.Out.WriteLine(line);
            }
        }

        return answer.No ? 1 : 0;
    }

    /// <summary>Says what is wrong with the input; 2.</summary>
    public static int Wrong(Problem problem, bool json) => Said(problem.Code, problem.Where, problem.Message, json, 2);

    /// <summary>Says that Trundle itself failed, without a trace; 3.</summary>
    public static int Fault(Exception exception, bool json) =>
        Said("internal-fault", exception.GetType().Name, $"Trundle failed inside ({exception.Message}). Nothing was written.", json, 3);

    private static int Said(string code, string where, string message, bool json, int status)
    {
        if (json)
        {
            var error = new JsonObject { ["error"] = new JsonObject { ["code"] = code, ["where"] = where, ["message"] = message } };
            Write(error);
        }
        else
        {
            Console.Error.WriteLine(where.Length == 0 ? message : $"{where}: {message}");
        }

        return status;
    }

    // A writer, not the serializer: the serializer's options take a third of the time of a short command.
    private static void Write(JsonObject body)
    {
        using var stream = Console.OpenStandardOutput();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            body.WriteTo(writer);
        }

        stream.Write("\n"u8);
    }
}
