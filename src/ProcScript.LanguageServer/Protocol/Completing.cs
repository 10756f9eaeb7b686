using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>Something that could be written here.</summary>
internal sealed record CompletionItem(string Label, int Kind)
{
    /// <summary>The text has places to fill in.</summary>
    public const int Snippet = 2;

    /// <summary>A few words beside it.</summary>
    public string? Detail { get; init; }

    /// <summary>What it is, at length.</summary>
    public MarkupContent? Documentation { get; init; }

    /// <summary>Its place in the order.</summary>
    public string? SortText { get; init; }

    /// <summary>What is written, where it is not the label.</summary>
    public string? InsertText { get; init; }

    /// <summary>What is written where, in place of what stands there.</summary>
    public TextEdit? TextEdit { get; init; }

    /// <summary>How that is to be read: <see cref="Snippet"/>, or plain where it is not said.</summary>
    public int? InsertTextFormat { get; init; }
}

/// <summary>What could be written here.</summary>
internal sealed record CompletionList(bool IsIncomplete, ImmutableArray<CompletionItem> Items);

/// <summary>When to ask what could be written.</summary>
internal sealed record CompletionOptions(ImmutableArray<string> TriggerCharacters);
