using System.Text;
using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>The sentences as tree-sitter's <c>grammar.js</c>.</summary>
/// <param name="sentences">The sentences.</param>
/// <param name="tokens">How their tokens are written.</param>
internal sealed class GrammarScript(TreeSentences sentences, TokenSpellings tokens)
{
    private const int Width = 120;

    /// <summary>
    /// What one word ahead does not decide; there the parser follows both ways, until one of them ends. A sentence new to the grammar may
    /// have to stand here too: the generator of tree-sitter says which.
    /// </summary>
    private static readonly string[][] Undecided =
    [
        ["need"], ["verifyProperty"], ["wayProperty", "wordPosition"], ["flagProperty", "wordPosition"], ["keepProperty", "wordPosition"], ["checkRule"], ["recordRule"],
        ["retorqueRule"], ["textAction"], ["recordAction"], ["pauseAction"], ["quantity"],
    ];

    /// <summary>
    /// Names, figures, texts and comments. A letter is what the lexer's stand-in for it is: any of the classes L, Nl and No. A text ends
    /// with its line, whatever it lacks; the scanner tells where.
    /// </summary>
    private const string Tokens = """
            // Where a name is due and a sentence begins instead, the scanner sees a name that is missing, so that the sentence is read.
            _name: $ => choice($.identifier, alias('rest', $.identifier), $._missing_name),

            identifier: _ => /[\p{L}\p{Nl}\p{No}_][\p{L}\p{Nl}\p{No}_0-9]*/,
            decimal: _ => /[0-9]+\.[0-9]+/,
            integer: _ => /[0-9]+/,
            screw_size: _ => /#[0-9]+/,

            // Most texts are one token of the scanner's; one with a placeholder or an escape has parts. Within a text that began with a
            // plain quote a typographic one is a character like any other.
            text: $ => choice(
              $.plain_text,
              seq('"', repeat(choice($._characters, $._brace, $.escape_sequence, $.placeholder)), choice(token.immediate('"'), $._line_end)),
              seq(
                /[\u201C-\u201F]/,
                repeat(choice($._unquoted, $._brace, $.escape_sequence, $.placeholder)),
                choice(token.immediate(/["\u201C-\u201F]/), $._line_end),
              ),
            ),
            _characters: _ => token.immediate(prec(1, /[^"\\{\r\n]+/)),
            _unquoted: _ => token.immediate(prec(1, /[^"\u201C-\u201F\\{\r\n]+/)),
            _brace: _ => token.immediate(prec(1, '{')),
            escape_sequence: _ => token.immediate(prec(1, /\\[^\r\n]?/)),
            placeholder: _ => token.immediate(prec(2, /\{[\p{L}_][\p{L}_0-9]*\}/)),

            comment: _ => /\/\/[^\r\n]*/,
            suppression: _ => token(prec(1, /\/\/[ \t]*proc:[ \t]*allow[ \t]+[\w-][^\r\n]*/)),
        """;

    /// <summary>Writes the grammar.</summary>
    public string Write()
    {
        StringBuilder script = new();
        script.Append("// Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar.\n\n");
        script.Append("module.exports = grammar({\n  name: 'procscript',\n\n  word: $ => $.identifier,\n\n");
        script.Append("  externals: $ => [$._missing_name, $.plain_text, $._line_end],\n\n");
        script.Append(@"  extras: $ => [/[\s\u00A0\uFEFF]/, $.comment, $.suppression],").Append("\n\n");
        var sets = Undecided.Select(set => $"    [{string.Join(", ", set.Select(name => $"$.{sentences.NameOf(name)}"))}],\n");
        script.Append($"  conflicts: $ => [\n{string.Concat(sets)}  ],\n\n");
        var choices = sentences.All.Keys.Where(name => name is not "wordPosition" && sentences.IsHidden(name)).Select(name => $"$.{sentences.NameOf(name)}");
        script.Append($"  supertypes: $ => [{string.Join(", ", choices)}],\n\n  rules: {{\n");
        foreach (var (name, body) in sentences.All)
        {
            script.Append($"    {sentences.NameOf(name)}: $ => {Laid(body, 4)},\n\n");
        }

        return script.Append(Tokens.ReplaceLineEndings("\n")).Append("\n  },\n});\n").ToString();
    }

    /// <summary>A piece on one line, or over several where it is too long for one.</summary>
    private string Laid(GrammarNode node, int indent)
    {
        var line = OnOneLine(node);
        if (indent + line.Length <= Width || node.Parts.Count == 0)
        {
            return line;
        }

        var inner = new string(' ', indent + 2);
        return $"{Function(node)}(\n{string.Concat(Leading(node).Concat(node.Parts.Select(part => Laid(part, indent + 2))).Concat(Trailing(node))
            .Select(part => $"{inner}{part},\n"))}{new string(' ', indent)})";
    }

    private string OnOneLine(GrammarNode node) => node switch
    {
        Symbol { IsToken: false } sentence => $"$.{sentences.NameOf(sentence.Name)}",
        Symbol token => Token(token.Name),
        _ => $"{Function(node)}({string.Join(", ", Leading(node).Concat(node.Parts.Select(OnOneLine)).Concat(Trailing(node)))})",
    };

    private string Token(string token) => tokens.Of(token) switch
    {
        [] => $"$.{TreeTokens.NodeOf(token)}",
        [var spelling] => $"'{spelling}'",
        var spellings => $"choice({string.Join(", ", spellings.Select(spelling => $"'{spelling}'"))})",
    };

    private static string Function(GrammarNode node) => node switch
    {
        Sequence => "seq",
        Choice => "choice",
        Repeated { Times: '?' } => "optional",
        Repeated { Times: '+' } => "repeat1",
        Repeated => "repeat",
        Field => "field",
        Alias => "alias",
        _ => throw new InvalidOperationException($"{node.GetType().Name} has no parts."),
    };

    private static IEnumerable<string> Leading(GrammarNode node) => node is Field field ? [$"'{field.Name}'"] : [];

    private static IEnumerable<string> Trailing(GrammarNode node) => node is Alias alias ? [$"$.{alias.Name}"] : [];
}
