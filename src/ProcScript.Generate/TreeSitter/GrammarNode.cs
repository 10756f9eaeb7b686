namespace ProcScript.Generate.TreeSitter;

/// <summary>One piece of a sentence, as a grammar writes it.</summary>
internal abstract record GrammarNode
{
    private GrammarNode()
    {
    }

    /// <summary>The pieces right below.</summary>
    public virtual IReadOnlyList<GrammarNode> Parts => [];

    /// <summary>A token, in capitals, or another sentence.</summary>
    public sealed record Symbol(string Name) : GrammarNode
    {
        /// <summary>Whether it is a token of the lexer.</summary>
        public bool IsToken => char.IsUpper(Name[0]);
    }

    /// <summary>One piece behind the other.</summary>
    public sealed record Sequence(IReadOnlyList<GrammarNode> Pieces) : GrammarNode
    {
        /// <inheritdoc/>
        public override IReadOnlyList<GrammarNode> Parts => Pieces;
    }

    /// <summary>One of several.</summary>
    public sealed record Choice(IReadOnlyList<GrammarNode> Alternatives) : GrammarNode
    {
        /// <inheritdoc/>
        public override IReadOnlyList<GrammarNode> Parts => Alternatives;
    }

    /// <summary>A piece that may be left out, or come again: <c>?</c>, <c>*</c> or <c>+</c>.</summary>
    public sealed record Repeated(GrammarNode Piece, char Times) : GrammarNode
    {
        /// <inheritdoc/>
        public override IReadOnlyList<GrammarNode> Parts => [Piece];
    }

    /// <summary>A piece that its sentence knows by a name.</summary>
    public sealed record Field(string Name, GrammarNode Piece) : GrammarNode
    {
        /// <inheritdoc/>
        public override IReadOnlyList<GrammarNode> Parts => [Piece];
    }

    /// <summary>A piece that stands in the tree as another sentence.</summary>
    public sealed record Alias(GrammarNode Piece, string Name) : GrammarNode
    {
        /// <inheritdoc/>
        public override IReadOnlyList<GrammarNode> Parts => [Piece];
    }

    /// <summary>The same node with each piece right below it made anew.</summary>
    public GrammarNode Select(Func<GrammarNode, GrammarNode> change) => this switch
    {
        Sequence sequence => new Sequence([.. sequence.Pieces.Select(change)]),
        Choice choice => new Choice([.. choice.Alternatives.Select(change)]),
        Repeated repeated => repeated with { Piece = change(repeated.Piece) },
        Field field => field with { Piece = change(field.Piece) },
        Alias alias => alias with { Piece = change(alias.Piece) },
        _ => this,
    };

    /// <summary>The symbols of a sentence, down to the last; what it takes from other sentences is not looked into.</summary>
    public IEnumerable<Symbol> Symbols() => this is Symbol symbol ? [symbol] : Parts.SelectMany(part => part.Symbols());
}
