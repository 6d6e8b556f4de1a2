namespace Refettle.Sheets.Tree;

/// <summary>A piece of a file with the place where it stands. Lines and columns count from 1.</summary>
internal abstract record Node(int Line, int Column);

/// <summary>A single value.</summary>
/// <param name="Quoted">Written in quotes: never a number, a truth value or nothing.</param>
internal sealed record Scalar(int Line, int Column, string Text, bool Quoted) : Node(Line, Column)
{
    public bool IsNothing => !Quoted && Text is "" or "~" or "null";
}

internal sealed record Sequence(int Line, int Column, IReadOnlyList<Node> Items) : Node(Line, Column);

/// <summary>Keys with their values, in the order of the file; keys are different.</summary>
internal sealed record Mapping(int Line, int Column, IReadOnlyList<Pair> Pairs) : Node(Line, Column)
{
    public Pair? Find(string key) => IndexOf(key) is var i and >= 0 ? Pairs[i] : null;

    /// <summary>Where the key is, -1 when it is not there.</summary>
    public int IndexOf(string key)
    {
        for (var i = 0; i < Pairs.Count; i++)
        {
            if (Pairs[i].Key.Text == key)
                return i;
        }

        return -1;
    }
}

internal sealed record Pair(Scalar Key, Node Value);
