namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Money through one future. Payments that cannot be made wait in the order in which they fell due, and none overtakes
/// another: what is dear is never starved by what is cheap.
/// </summary>
sealed class PurseCourse(MoneyIn income, int nodes)
{
    readonly int[] _ring = new int[nodes + 1];
    readonly float[] _due = new float[nodes];
    int _head, _count;
    double _balance;

    public double Balance => _balance;

    public double Spent { get; private set; }

    public bool Waiting => _count > 0;

    /// <summary>Day a due payment first had to wait; infinite when none did.</summary>
    public float Dry { get; private set; }

    public void Reset()
    {
        (_head, _count, _balance, Spent, Dry) = (0, 0, income.Limited ? income.OnHand : 0, 0, float.PositiveInfinity);
    }

    /// <summary>What comes in on a day; a sum below 0 is money spent elsewhere.</summary>
    public void Take(double amount)
    {
        if (income.Limited) _balance += amount;
    }

    /// <returns>Whether it was paid at once; otherwise it waits.</returns>
    public bool Pay(int node, float amount, float now)
    {
        if (amount <= 0) return true;
        if (!income.Limited || (_count == 0 && _balance >= amount))
        {
            Out(amount);
            return true;
        }
        _due[node] = amount;
        _ring[(_head + _count++) % _ring.Length] = node;
        if (float.IsPositiveInfinity(Dry)) Dry = now;
        return false;
    }

    /// <returns>The next payment that can be made now, −1 when there is none.</returns>
    public int Settle()
    {
        if (_count == 0 || _balance < _due[_ring[_head]]) return -1;
        var node = _ring[_head];
        Out(_due[node]);
        _head = (_head + 1) % _ring.Length;
        _count--;
        return node;
    }

    void Out(float amount)
    {
        _balance -= amount;
        Spent += amount;
    }
}
