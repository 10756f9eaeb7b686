using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ProcScript.Generate.TextMate;

/// <summary>The grammar that editors colour a text by, from the words and sentences of the language.</summary>
internal sealed class TextMateGenerator : IGenerator
{
    private static readonly JsonSerializerOptions Written = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        WriteIndented = true,
    };

    public string Name => "textmate";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        var words = LexerWords.Read(root);
        WordGroups groups = new(words, ParserWords.Read(root, words));
        JsonObject grammar = new()
        {
            ["$comment"] = "Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar.",
            ["name"] = "ProcScript",
            ["scopeName"] = Scope.Language,
            ["fileTypes"] = new JsonArray("proc"),
            ["patterns"] = Pattern.Includes("#declaration", "#within"),
            ["repository"] = new TextMateSentences(groups).Repository(),
        };
        return [new GeneratedFile("grammar/procscript.tmLanguage.json", grammar.ToJsonString(Written) + "\n")];
    }
}
