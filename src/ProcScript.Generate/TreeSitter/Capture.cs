namespace ProcScript.Generate.TreeSitter;

/// <summary>What editors call the classes of colours in a query; a theme that does not know the last part of a name takes the rest.</summary>
/// <param name="Scope">The class as the TextMate grammar has it.</param>
/// <param name="Plain">Its name in Neovim, and with tree-sitter's own program.</param>
/// <param name="Helix">Its name in Helix.</param>
internal sealed record Capture(string Scope, string Plain, string Helix)
{
    /// <summary>Every class. No two have the same name, so that a tree tells them apart.</summary>
    public static IReadOnlyList<Capture> All { get; } =
    [
        new(TextMate.Scope.Comment, "comment", "comment"),
        new(TextMate.Scope.Suppression, "keyword.directive", "keyword.directive"),
        new(TextMate.Scope.Text, "string", "string"),
        new(TextMate.Scope.Escape, "string.escape", "constant.character.escape"),
        new(TextMate.Scope.Placeholder, "variable.parameter.placeholder", "variable.parameter.placeholder"),
        new(TextMate.Scope.Declaration, "keyword.type", "keyword.storage.type"),
        new(TextMate.Scope.Joint, "keyword.modifier", "keyword.storage.modifier"),
        new(TextMate.Scope.Action, "function.builtin", "function.builtin"),
        new(TextMate.Scope.Alert, "keyword.exception", "keyword.control.exception"),
        new(TextMate.Scope.Flow, "keyword.conditional", "keyword.control.conditional"),
        new(TextMate.Scope.Sentence, "keyword", "keyword"),
        new(TextMate.Scope.Property, "property", "variable.other.member"),
        new(TextMate.Scope.State, "constant.builtin", "constant.builtin"),
        new(TextMate.Scope.Value, "constant", "constant"),
        new(TextMate.Scope.Mark, "constant.mark", "constant.mark"),
        new(TextMate.Scope.Number, "number", "constant.numeric"),
        new(TextMate.Scope.Unit, "type.unit", "type.unit"),
        new(TextMate.Scope.DeclaredName, "type.definition", "type"),
        new(TextMate.Scope.DeclaredItem, "function", "function"),
        new(TextMate.Scope.Kind, "type", "type.builtin"),
        new(TextMate.Scope.Item, "variable", "variable"),
        new(TextMate.Scope.Variable, "variable.parameter", "variable.parameter"),
        new(TextMate.Scope.Operator, "operator", "operator"),
        new(TextMate.Scope.Comma, "punctuation.delimiter", "punctuation.delimiter"),
        new(TextMate.Scope.Bracket, "punctuation.bracket", "punctuation.bracket"),
    ];
}
