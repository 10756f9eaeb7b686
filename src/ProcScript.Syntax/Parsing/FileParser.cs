using System.Collections.Immutable;
using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using Antlr4.Runtime.Misc;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Generated;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>From the text of a file to its tree.</summary>
internal static class FileParser
{
    public static SyntaxTree Parse(SourceText text, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var findings = new List<Finding>();
        var lexer = new ProcScriptLexer(new AntlrInputStream(text.Content), TextWriter.Null, TextWriter.Null);
        lexer.RemoveErrorListeners();
        var tokens = new CommonTokenStream(lexer);
        var parser = new ProcScriptParser(tokens, TextWriter.Null, TextWriter.Null)
        {
            ErrorHandler = new BailErrorStrategy(),
        };
        parser.RemoveErrorListeners();
        parser.Interpreter.PredictionMode = PredictionMode.SLL;
        ProcScriptParser.FileContext file;
        try
        {
            file = parser.file();
        }
        catch (ParseCanceledException)
        {
            tokens.Seek(0);
            parser.Reset();
            parser.ErrorHandler = new DefaultErrorStrategy();
            parser.Interpreter.PredictionMode = PredictionMode.LL;
            parser.AddErrorListener(new Listener(text, findings));
            file = parser.file();
        }

        var root = new FileBuilder(text, findings).Build(file);
        return new SyntaxTree(text, root, ImmutableArray<SuppressionComment>.Empty, [.. findings]);
    }

    private sealed class Listener(SourceText text, List<Finding> findings) : BaseErrorListener
    {
        public override void SyntaxError(
            TextWriter output, IRecognizer recognizer, IToken offendingSymbol, int line, int charPositionInLine, string msg, RecognitionException e)
        {
            var span = TextSpan.FromBounds(offendingSymbol.StartIndex, Math.Max(offendingSymbol.StartIndex, offendingSymbol.StopIndex + 1));
            findings.Add(UnexpectedText.At(new SourceSpan(text.Path, span), $"`{text.Slice(span)}`"));
        }
    }
}
