namespace ProcScript.Syntax.Tokens;

/// <summary>What sort of thing a token is.</summary>
public enum TokenCategory
{
    /// <summary>A word of the language. Some of them may serve as names; the tree says where one does.</summary>
    Keyword,

    /// <summary>Any other word: a name, a unit.</summary>
    Name,

    /// <summary>A quoted text with its quotes, closed or not.</summary>
    Text,

    /// <summary>A run of digits, with or without a decimal point; a screw size, <c>#10</c>.</summary>
    Number,

    /// <summary>A brace, bracket, comma, sign or comparison.</summary>
    Punctuation,

    /// <summary>A comment from its slashes to the end of the line.</summary>
    Comment,

    /// <summary>One line break: <c>\n</c>, <c>\r\n</c> or <c>\r</c>.</summary>
    LineBreak,

    /// <summary>A run of blanks within a line.</summary>
    WhiteSpace,

    /// <summary>A character that the language does not know.</summary>
    Unknown,
}
