namespace ProcScript.Generate.TextMate;

/// <summary>The names that colour themes know things by.</summary>
internal static class Scope
{
    public const string Language = "source.procscript";
    public const string Comment = "comment.line.double-slash.procscript";
    public const string Suppression = "keyword.control.suppression.procscript";
    public const string Rule = "entity.name.tag.rule.procscript";
    public const string Date = "constant.other.date.procscript";
    public const string Text = "string.quoted.double.procscript";
    public const string Escape = "constant.character.escape.procscript";
    public const string Placeholder = "variable.parameter.placeholder.procscript";
    public const string Declaration = "storage.type.procscript";
    public const string Joint = "storage.modifier.joint.procscript";
    public const string Action = "keyword.control.action.procscript";
    public const string Alert = "keyword.other.alert.procscript";
    public const string Flow = "keyword.control.flow.procscript";
    public const string Sentence = "keyword.other.procscript";
    public const string Property = "support.type.property-name.procscript";
    public const string State = "constant.language.state.procscript";
    public const string Value = "constant.other.value.procscript";
    public const string Mark = "constant.other.mark.procscript";
    public const string Number = "constant.numeric.procscript";
    public const string Unit = "keyword.other.unit.procscript";
    public const string DeclaredName = "entity.name.type.procscript";
    public const string DeclaredItem = "entity.name.function.procscript";
    public const string Kind = "support.class.kind.procscript";
    public const string Item = "variable.other.item.procscript";
    public const string Variable = "variable.parameter.procscript";
    public const string Operator = "keyword.operator.procscript";
    public const string Comma = "punctuation.separator.procscript";
    public const string Bracket = "punctuation.section.procscript";
    public const string Unknown = "invalid.illegal.procscript";
}
