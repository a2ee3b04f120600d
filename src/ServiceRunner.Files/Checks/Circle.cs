namespace ServiceRunner.Files.Checks;

/// <summary>Finds things that wait for each other in a circle, without recursion and in time that grows with the number of waits.</summary>
internal sealed class Circle(int count)
{
    private readonly List<int>?[] _waits = new List<int>?[count];

    /// <summary>One thing waits for another.</summary>
    public void Waits(int one, int forOther) => (_waits[one] ??= []).Add(forOther);

    /// <summary>A circle for each knot of things that wait for each other: its members in order, the first again at the end.</summary>
    public List<List<int>> All()
    {
        List<List<int>> circles = [];
        // 0 not seen, 1 on the way, 2 done.
        byte[] state = new byte[count];
        List<(int Thing, int Next)> way = [];
        for (int start = 0; start < count; start++)
        {
            if (state[start] != 0 || _waits[start] is null) continue;
            way.Add((start, 0));
            state[start] = 1;
            while (way.Count > 0)
            {
                (int thing, int next) = way[^1];
                if (_waits[thing] is not { } waits || next >= waits.Count)
                {
                    state[thing] = 2;
                    way.RemoveAt(way.Count - 1);
                    continue;
                }
                way[^1] = (thing, next + 1);
                int other = waits[next];
                if (state[other] == 0)
                {
                    state[other] = 1;
                    way.Add((other, 0));
                }
                else if (state[other] == 1)
                {
                    circles.Add([.. way.SkipWhile(w => w.Thing != other).Select(w => w.Thing), other]);
                    // One circle a knot is enough to begin with: the rest of this way is done.
                    foreach ((int each, _) in way) state[each] = 2;
                    way.Clear();
                }
            }
        }
        return circles;
    }
}
