using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>What placing lettering asks of a rectangle.</summary>
static class Boxes
{
    extension(Box box)
    {
        /// <summary>Holds nothing; its union with another is that other.</summary>
        public static Box Nothing => Box.Round([]);

        public Vec2 Middle => new((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2);

        public Box With(Vec2 p) => box.With(new Box(p.X, p.Y, p.X, p.Y));

        /// <summary>They share more than an edge.</summary>
        public bool Overlaps(Box o) => box.Left < o.Right && o.Left < box.Right && box.Bottom < o.Top && o.Bottom < box.Top;

        /// <summary>Whether the straight line from a to b enters the rectangle (Liang and Barsky's clipping).</summary>
        public bool Crosses(Vec2 a, Vec2 b)
        {
            double enter = 0, leave = 1;
            var d = b - a;
            return Clip(-d.X, a.X - box.Left) && Clip(d.X, box.Right - a.X) && Clip(-d.Y, a.Y - box.Bottom) && Clip(d.Y, box.Top - a.Y) && enter < leave;

            bool Clip(double slope, double room)
            {
                if (slope == 0) return room > 0;
                if (slope < 0) enter = Math.Max(enter, room / slope);
                else leave = Math.Min(leave, room / slope);
                return true;
            }
        }
    }
}
