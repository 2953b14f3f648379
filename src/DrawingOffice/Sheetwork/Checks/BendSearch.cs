using System.Collections;
using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>Depth-first search, backwards, over the bends still made.</summary>
sealed class BendSearch(FaceTree tree, Blank blank, Folder folder)
{
    readonly FolderTrial _trial = new(tree, blank, folder);
    readonly HashSet<string> _dead = [];
    readonly Stack<BendStep> _last = [];
    bool[]? _stuck;

    public BendOrder Run()
    {
        var made = new bool[tree.Bends.Length];
        Array.Fill(made, true);
        // A stack's order is last pushed first: the bend taken off last is made first.
        if (TakeOff(made)) return new(true, [.. _last], []);
        return new(false, [], [.. Blocked()]);
    }

    bool TakeOff(bool[] made)
    {
        if (!made.Contains(true)) return true;
        var key = Key(made);
        if (_dead.Contains(key)) return false;
        for (var i = made.Length - 1; i >= 0; i--)
        {
            if (!made[i] || _trial.Tries >= BendOrder.MostTrials) continue;
            made[i] = false;
            if (_trial.Make(i, made) is { Step: { } step })
            {
                _last.Push(step);
                if (TakeOff(made)) return true;
                _last.Pop();
            }
            made[i] = true;
        }
        _dead.Add(key);
        if (_stuck is null || made.Count(m => m) < _stuck.Count(m => m)) _stuck = [.. made];
        return false;
    }

    static string Key(bool[] made)
    {
        var bytes = new byte[(made.Length + 7) / 8];
        new BitArray(made).CopyTo(bytes, 0);
        return Convert.ToHexString(bytes);
    }

    /// <summary>The smallest set of bends of which none can be made last, and what each would hit.</summary>
    IEnumerable<Caution> Blocked()
    {
        if (_trial.Tries >= BendOrder.MostTrials)
            yield return new(CautionKind.CannotBend, "No order of bends was found within the search's limit; there may be one.", []);
        var made = _stuck!;
        var (told, left) = (0, made.Count(m => m));
        for (var i = 0; i < made.Length && told < MostTold; i++)
        {
            if (!made[i]) continue;
            made[i] = false;
            var hits = _trial.Make(i, made).Hits;
            made[i] = true;
            told++;
            var id = blank.BendLines[i].Id;
            yield return new(CautionKind.CannotBend, $"Bend {id} cannot be made in this folder after the others: {hits}.", [id]);
        }
        if (left > told) yield return new(CautionKind.CannotBend, $"Nor can {left - told} bends more.", []);
    }

    /// <summary>A person mends one obstacle at a time; more than a handful of sentences are not read.</summary>
    const int MostTold = 6;
}
