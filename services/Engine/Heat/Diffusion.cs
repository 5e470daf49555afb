namespace PostFrame.Engine.Heat;

/// <summary>
/// Steady vapour diffusion through a profile (Glaser). Vapour pressure is straight over sd; where
/// it would exceed saturation it is held at saturation and the difference of the flows condenses.
/// Source: ISO 13788:2012 clause 6; ASHRAE HoF 2021 ch. 27 §2.2.
/// </summary>
/// <remarks>
/// Pressure under saturation with flow lost only where it condenses is the lower convex hull of
/// the saturation points between fixed ends: a string pulled tight beneath them.
/// </remarks>
public static class Diffusion
{
    /// <summary>Solves one state.</summary>
    /// <param name="profile">From room air to outdoor air; sd per part [m].</param>
    /// <param name="roomPa">Vapour pressure of the room air [Pa], 0.1 to 20 000.</param>
    /// <param name="outdoorPa">Vapour pressure outdoors [Pa], 0.1 to 20 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A pressure outside its range.</exception>
    public static DiffusionState Steady(
        IReadOnlyList<ProfileNode> profile, double roomPa, double outdoorPa)
    {
        ArgumentNullException.ThrowIfNull(profile);
        var path = VapourPath.Through(profile, VapourPath.PartsOf(profile));
        var last = path.Sd.Length - 1;
        var pressure = Pressures(path, roomPa, outdoorPa, new bool[last + 1]);
        var rates = Rates(path, pressure);
        return new DiffusionState
        {
            Points = [.. path.Points.Select((point, i) => new VapourPoint(
                point.Name, point.At, point.Sd, Vapour.Saturation(point.At),
                i == 0 ? roomPa : pressure[path.StationOf[i]],
                i == path.ColdestPoint[path.StationOf[i]] ? rates[path.StationOf[i]] : 0)
            {
                StationSaturationPa = path.Saturation[path.StationOf[i]],
                Leg = IsHeld(path, pressure, path.StationOf[i])
                    ? null
                    : LegAround(path, pressure, path.StationOf[i]),
            })],
            RoomFaceDrips = roomPa > path.Saturation[0] * (1 + 1e-9),
            FromRoom = FirstLeg(path, pressure),
            ToOutdoors = LastLeg(path, pressure),
        };
    }

    /// <summary>
    /// Vapour pressure at each station [Pa], those that are wet held at saturation.
    /// </summary>
    internal static double[] Pressures(
        VapourPath path, double roomPa, double outdoorPa, bool[] wet)
    {
        Limits.Check(roomPa, 0.1, 20_000, "Pa", nameof(roomPa));
        Limits.Check(outdoorPa, 0.1, 20_000, "Pa", nameof(outdoorPa));
        var last = path.Sd.Length - 1;
        var pressure = new double[last + 1];
        // What the air itself touches drips at once when colder than the dew point, at a rate the
        // air film sets and diffusion cannot tell; so the ends are held at saturation at most.
        pressure[0] = Math.Min(roomPa, path.Saturation[0]);
        pressure[last] = Math.Min(outdoorPa, path.Saturation[last]);
        var from = 0;
        for (var i = 1; i <= last; i++)
        {
            if (i < last && !wet[i]) continue;
            if (i < last) pressure[i] = path.Saturation[i];
            Hull(path, pressure, from, i);
            from = i;
        }
        return pressure;
    }

    /// <summary>
    /// From the room to the first station held at saturation, or to outdoors; null where nothing
    /// holds vapour back.
    /// </summary>
    internal static VapourLeg? FirstLeg(VapourPath path, double[] pressure) =>
        pressure.Length == 1 ? null : LegAround(path, pressure, 0.5);

    /// <summary>From the last such station, or from the room, to outdoors.</summary>
    internal static VapourLeg? LastLeg(VapourPath path, double[] pressure) =>
        pressure.Length == 1 ? null : LegAround(path, pressure, pressure.Length - 1.5);

    /// <summary>The leg that a place between two stations lies on.</summary>
    private static VapourLeg LegAround(VapourPath path, double[] pressure, double place)
    {
        var (from, to) = ((int)Math.Ceiling(place) - 1, (int)Math.Floor(place) + 1);
        while (!IsHeld(path, pressure, from)) from--;
        while (!IsHeld(path, pressure, to)) to++;
        return new(pressure[from], path.Sd[from], pressure[to], path.Sd[to]);
    }

    /// <summary>True at both ends and where the pressure is held at saturation.</summary>
    private static bool IsHeld(VapourPath path, double[] pressure, int station) =>
        station == 0 || station == pressure.Length - 1
        || pressure[station] == path.Saturation[station];

    /// <summary>What condenses at each station, negative what evaporates [kg/(m²·s)].</summary>
    internal static double[] Rates(VapourPath path, double[] pressure)
    {
        var rates = new double[pressure.Length];
        for (var i = 1; i < rates.Length - 1; i++)
        {
            var rate = Flow(path, pressure, i - 1) - Flow(path, pressure, i);
            rates[i] = Math.Abs(rate) < 1e-15 ? 0 : rate;
        }
        return rates;
    }

    /// <summary>
    /// The string pulled tight below saturation between two stations of known pressure.
    /// </summary>
    private static void Hull(VapourPath path, double[] pressure, int from, int to)
    {
        double Height(int i) => i == from || i == to ? pressure[i] : path.Saturation[i];
        bool Bends(int a, int b, int c) =>
            (Height(b) - Height(a)) * (path.Sd[c] - path.Sd[b])
                < (Height(c) - Height(b)) * (path.Sd[b] - path.Sd[a]);

        var hull = new List<int> { from };
        for (var i = from + 1; i <= to; i++)
        {
            while (hull.Count > 1 && !Bends(hull[^2], hull[^1], i)) hull.RemoveAt(hull.Count - 1);
            hull.Add(i);
        }
        for (var k = 1; k < hull.Count; k++)
        {
            var (a, b) = (hull[k - 1], hull[k]);
            var (low, high) = (Height(a), Height(b));
            for (var i = a + 1; i < b; i++)
                pressure[i] = low
                    + (high - low) * (path.Sd[i] - path.Sd[a]) / (path.Sd[b] - path.Sd[a]);
            if (b != to) pressure[b] = high;
        }
    }

    /// <summary>Vapour from one station to the next [kg/(m²·s)].</summary>
    internal static double Flow(VapourPath path, double[] pressure, int from) =>
        Vapour.StillAirPermeability * (pressure[from] - pressure[from + 1])
            / (path.Sd[from + 1] - path.Sd[from]);
}
