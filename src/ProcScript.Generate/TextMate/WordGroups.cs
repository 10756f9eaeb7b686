namespace ProcScript.Generate.TextMate;

/// <summary>The words of the language by what they do in a sentence. The parser's grammar says so; this names where.</summary>
/// <param name="words">All words.</param>
/// <param name="parser">The sentences they stand in.</param>
internal sealed class WordGroups(LexerWords words, ParserWords parser)
{
    /// <summary>Every word of the language.</summary>
    public IReadOnlyCollection<string> All => words.All;

    /// <summary>The words that may serve as names too.</summary>
    public IReadOnlyList<string> Names { get; } = parser.In("name");

    /// <summary>What declares something at the top of a file.</summary>
    public IReadOnlyList<string> Declarations { get; } =
        parser.AtTheStartOf("catalogDeclaration", "machineDeclaration", "procedureDeclaration");

    /// <summary>What declares an item of a machine.</summary>
    public IReadOnlyList<string> Members { get; } = parser.AtTheStartOf(
        "optionDeclaration", "energyDeclaration", "fluidDeclaration", "controlDeclaration", "placeDeclaration", "partDeclaration");

    /// <summary>What ties a part, and what hides a joint.</summary>
    public IReadOnlyList<string> Joints { get; } = parser.AtTheStartOf("jointDeclaration", "cover");

    /// <summary>What is done to an item.</summary>
    public IReadOnlyList<string> Verbs { get; } = [.. parser.In("verb", "actionVerb", "snugVerb").Concat(parser.AtTheStartOf("retorqueRule"))];

    /// <summary>What is done in words.</summary>
    public IReadOnlyList<string> TextActions { get; } = parser.AtTheStartOf("textAction", "recordAction", "pauseAction", "discard");

    /// <summary>The signal words.</summary>
    public IReadOnlyList<string> Alerts { get; } = parser.In("alert");

    /// <summary>What shapes a procedure and what unrolls.</summary>
    public IReadOnlyList<string> Flow { get; } = parser.AtTheStartOf(
        "useDirective", "goal", "stage", "doCall", "workBlock", "refitRules", "testRule", "eachMembers", "whenMembers");

    /// <summary>Properties that take a text.</summary>
    public IReadOnlyList<string> TextProperties { get; } = parser.AtTheStartOf("textProperty", "verbsProperty", "verifyProperty", "asideClause", "figure");

    /// <summary>Every property by its first word.</summary>
    public IReadOnlyList<string> Properties { get; } = parser.AtTheStartOf(
        "textProperty", "figure", "quantityProperty", "massProperty", "torqueProperty", "namesProperty", "renewProperty", "patternProperty", "gripProperty",
        "peopleProperty", "threadProperty", "gradeProperty", "piecesProperty", "usesProperty", "changeProperty", "singleUseProperty",
        "flagProperty", "reuseProperty", "keepProperty", "prevailingProperty", "verifyProperty", "voltageProperty", "powerClause", "behindProperty", "wayProperty", "forVariants");

    /// <summary>Words that names follow, one or several.</summary>
    public IReadOnlyList<string> BeforeNames { get; } =
        parser.AtTheStartOf("namesProperty", "behindProperty", "namesClause", "changeProperty", "usesProperty", "doCall", "powerClause", "forVariants");

    /// <summary>What an item can be.</summary>
    public IReadOnlyList<string> States { get; } = parser.In("needState");

    /// <summary>The sorts of current behind a voltage.</summary>
    public IReadOnlyList<string> Currents { get; } = [.. parser.In("voltageProperty").Except(["voltage"])];

    /// <summary>Words that are the value of a property.</summary>
    public IReadOnlyList<string> Values { get; } = [.. parser.In("patternProperty", "gripProperty").Except(["pattern", "grip"])];

    /// <summary>
    /// The words by the class that each has outside a sentence, a word in the first of its classes: every word has a place, so that a new
    /// one has its colour with no edit but the grammar's.
    /// </summary>
    public IReadOnlyList<(string Scope, IReadOnlyList<string> Words)> Alone =>
    [
        (Scope.Alert, Alerts),
        (Scope.Action, [.. Verbs, .. TextActions]),
        (Scope.Joint, Joints),
        (Scope.Flow, Flow),
        (Scope.Property, Properties),
        (Scope.Declaration, [.. Declarations, .. Members]),
        (Scope.State, States),
        (Scope.Sentence, [.. All]),
    ];
}
