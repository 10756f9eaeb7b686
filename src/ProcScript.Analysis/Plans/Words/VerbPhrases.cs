using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

internal static class VerbPhrases
{
    public static string Of(Verb verb) => verb switch
    {
        Verb.Aside => "Move {0} aside",
        Verb.Return => "Move {0} back",
        Verb.Plug => "Plug in {0}",
        Verb.Unsupport => "Take the support of {0} away",
        Verb.Task or Verb.Check => "{0}",
        _ => verb + " {0}",
    };
}
