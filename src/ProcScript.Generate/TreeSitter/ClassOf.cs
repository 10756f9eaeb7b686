using ProcScript.Generate.TextMate;

namespace ProcScript.Generate.TreeSitter;

/// <summary>The class of colour that a word or a name has in its sentence, by the sentence's name in the parser's grammar.</summary>
internal static class ClassOf
{
    /// <summary>The class of a word of the language.</summary>
    public static string Word(string sentence, string word) => (sentence, word) switch
    {
        ("position", _) or (_, "none") => Scope.Value,
        ("reuseProperty", _) => Scope.Property,
        ("textProperty", "check") => Scope.Action,
        (_, "needs" or "expect" or "of" or "at" or "because" or "before" or "or" or "unknown") => Scope.Sentence,
        ("procedureDeclaration", "on") or ("placeDeclaration", "room" or "for") or ("retorqueRule", "after") or ("stripProperty" or "refitAlert", _) => Scope.Sentence,
        ("patternProperty", not "pattern") or ("gripProperty", not "grip") or ("voltageProperty", not "voltage") => Scope.Value,
        ("jointDeclaration" or "cover", _) => Scope.Joint,
        ("useDirective" or "goal" or "stage" or "doCall" or "workBlock" or "testRule" or "test" or "parameter", _) => Scope.Flow,
        ("verb" or "actionVerb" or "orderVerb" or "action" or "snugRule" or "retorqueRule", _) => Scope.Action,
        ("textAction" or "recordAction" or "pauseAction" or "checkRule" or "recordRule" or "pauseRule" or "discard", _) => Scope.Action,
        ("alert", _) => Scope.Alert,
        ("needState", _) => Scope.State,
        ("asideClause" or "figure" or "forVariants" or "powerClause" or "instruments", _) => Scope.Property,
        _ when sentence.StartsWith("each", StringComparison.Ordinal) || sentence.StartsWith("when", StringComparison.Ordinal) => Scope.Flow,
        _ when sentence.EndsWith("Declaration", StringComparison.Ordinal) => Scope.Declaration,
        _ when sentence.EndsWith("Property", StringComparison.Ordinal) => Scope.Property,
        _ => Scope.Sentence,
    };

    /// <summary>The class of a name, by what its sentence calls it; null where it calls it nothing.</summary>
    public static string Name(string sentence, string? field) => (sentence, field) switch
    {
        (_, "kind") => Scope.Kind,
        ("optionDeclaration", _) => Scope.DeclaredItem,
        (_, "name") => Scope.DeclaredName,
        ("test" or "parameter", _) => Scope.Variable,
        ("value" or "firstValues" or "position", _) => Scope.Value,
        _ when sentence.StartsWith("each", StringComparison.Ordinal) => Scope.Variable,
        _ => Scope.Item,
    };

    /// <summary>The class of a name that may have an index.</summary>
    public static string Reference(string? field) => field is "name" ? Scope.DeclaredItem : Scope.Item;
}
