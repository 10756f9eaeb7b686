using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using Antlr4.Runtime.Misc;
using ProcScript.Syntax.Generated;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>From the text of a file to its tree.</summary>
internal static class FileParser
{
    private static readonly FileSyntax Empty = new(default, [], []);

    public static SyntaxTree Parse(SourceText text, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var log = new FindingLog(text);
        if (!EncodingCheck.Passes(text, log))
        {
            return new SyntaxTree(text, Empty, [], log.InOrder());
        }

        var lexed = FileLexer.Read(text, log, cancellation);
        var lexemes = BlockRepair.Mend(text, lexed.Lexemes, log);
        var file = Recognize(lexemes, text.Content.Length, cancellation) ?? Recover(lexemes, text, log, cancellation);
        var root = new FileBuilder(text, log).Build(file);
        return new SyntaxTree(text, root, lexed.Suppressions, log.InOrder());
    }

    // Nearly every file is a good one. The short way of predicting is sure there, and a slip ends it at once.
    private static ProcScriptParser.FileContext? Recognize(List<Lexeme> lexemes, int length, CancellationToken cancellation)
    {
        var tokens = new ParserTokenStream(lexemes, length, cancellation);
        var parser = CreateParser(tokens, new BailErrorStrategy());
        parser.Interpreter.PredictionMode = PredictionMode.SLL;
        try
        {
            return parser.file();
        }
        catch (ParseCanceledException)
        {
            return null;
        }
    }

    private static ProcScriptParser.FileContext Recover(
        List<Lexeme> lexemes, SourceText text, FindingLog log, CancellationToken cancellation)
    {
        var tokens = new ParserTokenStream(lexemes, text.Content.Length, cancellation);
        var lookahead = new SentenceLookahead(ProcScriptParser._ATN);
        var repairs = new RepairSearch(text, tokens, lookahead);
        var recovery = new SlipRecovery(tokens, lookahead, repairs, new SlipReport(text, tokens, log));
        var parser = CreateParser(tokens, recovery);
        parser.Interpreter.PredictionMode = PredictionMode.LL;
        return parser.file();
    }

    private static ProcScriptParser CreateParser(ParserTokenStream tokens, IAntlrErrorStrategy strategy)
    {
        var parser = new ProcScriptParser(tokens, TextWriter.Null, TextWriter.Null) { ErrorHandler = strategy };
        parser.RemoveErrorListeners();
        return parser;
    }
}
