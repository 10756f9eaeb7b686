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

    /// <summary>
    /// What stands on some lines of a text, from the beginning of a declaration on; null unless these are declarations and nothing else,
    /// and nothing is wrong with them.
    /// </summary>
    public static (FileSyntax Root, LexedFile Lexed)? ParseCleanLines(SourceText text, TextSpan lines, CancellationToken cancellation)
    {
        var log = new FindingLog(text);
        if (!EncodingCheck.IsClean(text.Content.AsSpan(lines.Start, lines.Length)))
        {
            return null;
        }

        var lexed = FileLexer.Read(text, lines, log, cancellation);
        if (log.Lines().Count > 0
            || lexed.Lexemes is not [var first, ..]
            || !BlockRepair.IsBalanced(lexed.Lexemes)
            || Recognize(lexed.Lexemes, lines.End, cancellation) is not { } file)
        {
            return null;
        }

        var root = new FileBuilder(text, log).Build(file);
        return log.Lines().Count == 0 && root.Uses.IsEmpty && root.Declarations is [var declaration, ..] && declaration.Span.Start == first.Start
            ? (root, lexed)
            : null;
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
        var mended = ForgottenOf.Mend(text, BareVerbRepair.Mend(text, StrayStepRepair.Mend(text, lexemes, log), log), log);
        var tokens = new ParserTokenStream(mended, text.Content.Length, cancellation);
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
