package varanid.intake.page.animal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import varanid.intake.visit.SignHistory;

/**
 * One finding over time, drawn small: further right is later, further up is worse. All of one history have the same
 * scale, so that they can be read against each other.
 *
 * @param name the finding
 * @param way the line that joins what was seen, as SVG path data: it breaks where it was not seen
 * @param spots one for each look that asked for it
 */
public record SignPlot(String name, String way, List<Spot> spots) {

    public static final int WIDTH = 160;
    public static final int HEIGHT = 48;

    private static final int MARGIN = 12;
    private static final int SERIOUS = 8;
    private static final int SIGN = 22;
    private static final int WELL = 36;

    public SignPlot {
        spots = List.copyOf(spots);
    }

    /** A mark and its middle, in units of the drawing. */
    public record Spot(SignHistory.Mark mark, int x, int y) {}

    static List<SignPlot> of(SignHistory history) {
        List<SignPlot> plots = new ArrayList<>();
        for (SignHistory.Sign sign : history.signs()) {
            plots.add(of(history.looks(), sign));
        }
        return plots;
    }

    private static SignPlot of(List<SignHistory.Look> looks, SignHistory.Sign sign) {
        List<Spot> spots = new ArrayList<>();
        StringBuilder way = new StringBuilder();
        boolean joined = false;
        for (int i = 0; i < looks.size(); i++) {
            SignHistory.Mark mark = sign.cells().get(i).mark();
            boolean seen = mark != SignHistory.Mark.UNSEEN && mark != SignHistory.Mark.NOT_ASKED;
            Spot spot = new Spot(mark, x(looks, looks.get(i).at()), y(mark));
            if (seen) {
                way.append(joined ? "L" : "M").append(spot.x()).append(' ').append(spot.y());
            }
            if (mark != SignHistory.Mark.NOT_ASKED) {
                spots.add(spot);
            }
            joined = seen;
        }
        return new SignPlot(sign.name(), way.toString(), spots);
    }

    private static int x(List<SignHistory.Look> looks, Instant at) {
        Instant first = looks.get(0).at();
        long all = Duration.between(first, looks.get(looks.size() - 1).at()).toMinutes();
        if (all == 0) {
            return WIDTH - MARGIN;
        }
        long since = Duration.between(first, at).toMinutes();
        return Math.toIntExact(MARGIN + (WIDTH - 2 * MARGIN) * since / all);
    }

    private static int y(SignHistory.Mark mark) {
        return switch (mark) {
            case SERIOUS -> SERIOUS;
            case SIGN -> SIGN;
            default -> WELL;
        };
    }
}
