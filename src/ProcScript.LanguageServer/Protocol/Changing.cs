using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>Asks to give a thing another name.</summary>
internal sealed record RenameParams(TextDocumentIdentifier TextDocument, Position Position, string NewName);

/// <summary>What would be renamed.</summary>
internal sealed record PrepareRenameResult(Range Range, string Placeholder);

/// <summary>Asks to lay a document out.</summary>
internal sealed record DocumentFormattingParams(TextDocumentIdentifier TextDocument);

/// <summary>Asks to lay a stretch out.</summary>
internal sealed record DocumentRangeFormattingParams(TextDocumentIdentifier TextDocument, Range Range);

/// <summary>Asks what can be done about a stretch.</summary>
internal sealed record CodeActionParams(TextDocumentIdentifier TextDocument, Range Range, CodeActionContext Context);

/// <summary>What kinds of actions are wanted; all where it is not said.</summary>
internal sealed record CodeActionContext
{
    /// <summary>The kinds.</summary>
    public ImmutableArray<string>? Only { get; init; }

    /// <summary>1 where somebody asks, 2 where the editor does by itself, as whenever the cursor moves; null where it is not said.</summary>
    public int? TriggerKind { get; init; }
}

/// <summary>Something that can be done about a stretch.</summary>
internal sealed record CodeAction(string Title, string Kind, WorkspaceEdit? Edit)
{
    /// <summary>Mends a finding.</summary>
    public const string QuickFix = "quickfix";

    /// <summary>Writes something in another way.</summary>
    public const string Rewrite = "refactor.rewrite";

    /// <summary>Makes a thing of its own of a piece.</summary>
    public const string Extract = "refactor.extract";

    /// <summary>Mends all of a document that can be mended without anybody's looking.</summary>
    public const string FixAll = "source.fixAll";

    /// <summary>Shows something and changes nothing.</summary>
    public const string Show = "procscript.show";

    /// <summary>What it has the server do; null where it is an edit.</summary>
    public Command? Command { get; init; }

    /// <summary>The findings that it mends.</summary>
    public ImmutableArray<Diagnostic>? Diagnostics { get; init; }

    /// <summary>Whether it is the one to take.</summary>
    public bool? IsPreferred { get; init; }
}

/// <summary>What kinds of actions the server knows.</summary>
internal sealed record CodeActionOptions(ImmutableArray<string> CodeActionKinds);

/// <summary>That a rename can be asked about first.</summary>
internal sealed record RenameOptions(bool PrepareProvider);

/// <summary>That links come whole.</summary>
internal sealed record DocumentLinkOptions(bool ResolveProvider);
