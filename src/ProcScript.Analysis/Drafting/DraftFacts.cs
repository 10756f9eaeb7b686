using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting;

/// <summary>What is known of a machine beside its steps, from notes or a list of parts.</summary>
public sealed record DraftFacts
{
    /// <summary>Nothing.</summary>
    public static readonly DraftFacts None = new();

    /// <summary>The machine's title; null for its name in words.</summary>
    public string? MachineTitle { get; init; }

    /// <summary>What is known of items, by their names.</summary>
    public ImmutableDictionary<string, ItemFacts> Items { get; init; } = ImmutableDictionary.Create<string, ItemFacts>(StringComparer.Ordinal);

    /// <summary>The titles of tools, supplies and kinds, by their names.</summary>
    public ImmutableDictionary<string, CatalogFacts> Catalog { get; init; } = ImmutableDictionary.Create<string, CatalogFacts>(StringComparer.Ordinal);

    internal ItemFacts Of(string item) => Items.GetValueOrDefault(item, ItemFacts.None);
}

/// <summary>What is known of an item.</summary>
public sealed record ItemFacts
{
    /// <summary>Nothing.</summary>
    public static readonly ItemFacts None = new();

    /// <summary>What people call it.</summary>
    public string? Title { get; init; }

    /// <summary>Sentences of the language that belong into its block, such as <c>mass 4 kg</c>.</summary>
    public ImmutableArray<string> Properties { get; init; } = [];

    /// <summary>Questions that are still open, without their mark.</summary>
    public ImmutableArray<string> Questions { get; init; } = [];

    /// <summary>Of a joint, how many pieces it has; 0 where nobody says.</summary>
    public int Count { get; init; }

    /// <summary>Of a joint, the part that it ties, where that is known.</summary>
    public string? Owner { get; init; }
}

/// <summary>What is known of a tool, a supply or a kind.</summary>
/// <param name="Title">What people call it.</param>
/// <param name="Properties">Sentences of the language that belong into its block.</param>
public sealed record CatalogFacts(string Title, ImmutableArray<string> Properties);
