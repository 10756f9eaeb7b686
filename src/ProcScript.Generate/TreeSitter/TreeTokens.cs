namespace ProcScript.Generate.TreeSitter;

/// <summary>The tokens that are a node of the tree with a name, since they are written in many ways.</summary>
internal static class TreeTokens
{
    /// <summary>The node of a figure or a name.</summary>
    /// <exception cref="GenerationException">The parser's grammar has a token that is not known here.</exception>
    public static string NodeOf(string token) => token switch
    {
        "NAME" => "identifier",
        "DECIMAL" => "decimal",
        "INTEGER" => "integer",
        "SCREW_SIZE" => "screw_size",
        _ => throw new GenerationException($"'{token}' of the lexer's grammar is no word and no sign, and has no node in grammar.js."),
    };
}
