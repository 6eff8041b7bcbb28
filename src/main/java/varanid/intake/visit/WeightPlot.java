package varanid.intake.visit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.platform.web.Markup;

/**
 * Weights over time as an SVG drawing: a dot for each weighing that is compared with others, joined by a line, and a bar
 * over what its scale may hide; an open square for one that is not compared. The axis of grams does not begin at nought,
 * and says so by its labels.
 */
final class WeightPlot {

    /**
     * How large it is drawn, in pixels of its own.
     *
     * @param left room for the labels of grams
     * @param bottom room for the dates
     * @param type the size of its letters
     */
    record Size(int width, int height, int left, int bottom, int type) {}

    /** Small enough for a page full of other things. */
    static final Size PAPER = new Size(340, 104, 48, 22, 9);

    /** To be read on a phone. */
    static final Size SCREEN = new Size(340, 200, 64, 30, 13);

    private static final int RIGHT = 10;
    private static final int TOP = 10;
    private static final int MOST_TICKS = 3;

    private final List<Summary.WeightPoint> points;
    private final Size size;
    private final ReaderDates dates;
    private final LocalDate first;
    private final long days;
    private final double lowest;
    private final double highest;
    private final double step;

    private WeightPlot(List<Summary.WeightPoint> points, Size size, ReaderDates dates) {
        this.dates = dates;
        this.points = points;
        this.size = size;
        this.first = points.get(0).on();
        this.days = ChronoUnit.DAYS.between(first, points.get(points.size() - 1).on());
        double least = points.stream().mapToDouble(WeightPlot::low).min().orElseThrow();
        double most = points.stream().mapToDouble(WeightPlot::high).max().orElseThrow();
        double span = most - least;
        if (span <= 0) {
            span = Math.max(most * 0.1, 0.1);
            least -= span / 2;
            most += span / 2;
        }
        this.step = niceStep(span / MOST_TICKS);
        this.lowest = Math.max(0, Math.floor(least / step) * step);
        this.highest = Math.ceil(most / step) * step;
    }

    /**
     * The drawing; empty where there is no second weighing to draw a change to.
     *
     * @param title its text alternative
     * @param size how large
     * @param dates as its reader writes them
     */
    static Optional<String> svg(List<Summary.WeightPoint> points, String title, Size size, ReaderDates dates) {
        if (points.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(new WeightPlot(
                        points.stream()
                                .sorted(Comparator.comparing(Summary.WeightPoint::at))
                                .toList(),
                        size,
                        dates)
                .draw(title));
    }

    private String draw(String title) {
        StringBuilder svg = new StringBuilder();
        String name = Markup.escape(title);
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" role=\"img\" width=\"")
                .append(size.width())
                .append("\" height=\"")
                .append(size.height())
                .append("\" viewBox=\"0 0 ")
                .append(size.width())
                .append(' ')
                .append(size.height())
                .append("\" color=\"#000000\" font-family=\"DejaVu Sans, sans-serif\" font-size=\"")
                .append(size.type())
                .append("\" aria-label=\"")
                .append(name)
                .append("\" alt=\"")
                .append(name)
                .append("\"><title>")
                .append(name)
                .append("</title>");
        axes(svg);
        line(svg);
        points.forEach(point -> mark(svg, point));
        return svg.append("</svg>").toString();
    }

    private void axes(StringBuilder svg) {
        for (double grams = lowest; grams <= highest + step / 2; grams += step) {
            double y = y(grams);
            svg.append(segment(size.left(), y, size.width() - RIGHT, y, 0.2))
                    .append(text(size.left() - 4, y + size.type() / 3.0, "end", label(grams) + " g"));
        }
        svg.append(segment(
                size.left(), size.height() - size.bottom(), size.width() - RIGHT, size.height() - size.bottom(), 1));
        svg.append(text(
                x(first),
                size.height() - size.type() * 2 / 3.0,
                days == 0 ? "middle" : "start",
                dates.shortDay(first)));
        if (days > 0) {
            svg.append(text(
                    size.width() - RIGHT,
                    size.height() - size.type() * 2 / 3.0,
                    "end",
                    dates.shortDay(first.plusDays(days))));
        }
    }

    private void line(StringBuilder svg) {
        List<Summary.WeightPoint> joined =
                points.stream().filter(Summary.WeightPoint::comparable).toList();
        if (joined.size() < 2) {
            return;
        }
        svg.append("<polyline fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.2\" points=\"");
        joined.forEach(point -> svg.append(number(x(point.on())))
                .append(',')
                .append(number(y(point.grams().doubleValue())))
                .append(' '));
        svg.append("\"/>");
    }

    private void mark(StringBuilder svg, Summary.WeightPoint point) {
        double x = x(point.on());
        double y = y(point.grams().doubleValue());
        if (point.stepGrams() != null) {
            svg.append(segment(x, y(low(point)), x, y(high(point)), 1));
        }
        if (point.comparable()) {
            svg.append("<circle fill=\"currentColor\" r=\"2.6\" cx=\"")
                    .append(number(x))
                    .append("\" cy=\"")
                    .append(number(y))
                    .append("\"/>");
        } else {
            svg.append("<rect fill=\"none\" stroke=\"currentColor\" width=\"5\" height=\"5\" x=\"")
                    .append(number(x - 2.5))
                    .append("\" y=\"")
                    .append(number(y - 2.5))
                    .append("\"/>");
        }
    }

    private double x(LocalDate on) {
        double width = size.width() - size.left() - RIGHT;
        return days == 0 ? size.left() + width / 2 : size.left() + width * ChronoUnit.DAYS.between(first, on) / days;
    }

    private double y(double grams) {
        double height = size.height() - TOP - size.bottom();
        return TOP + height * (highest - grams) / (highest - lowest);
    }

    private static double low(Summary.WeightPoint point) {
        return point.grams().doubleValue() - half(point);
    }

    private static double high(Summary.WeightPoint point) {
        return point.grams().doubleValue() + half(point);
    }

    private static double half(Summary.WeightPoint point) {
        return point.stepGrams() == null ? 0 : point.stepGrams().doubleValue() / 2;
    }

    /** One, two or five times a power of ten, and no less than what is asked for. */
    private static double niceStep(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double times : new double[] {1, 2, 5}) {
            if (times * power >= least) {
                return times * power;
            }
        }
        return 10 * power;
    }

    private static String label(double grams) {
        return new BigDecimal(grams, new MathContext(6, RoundingMode.HALF_UP))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String segment(double x1, double y1, double x2, double y2, double width) {
        return "<line stroke=\"currentColor\" stroke-width=\"" + number(width) + "\" x1=\"" + number(x1) + "\" y1=\""
                + number(y1) + "\" x2=\"" + number(x2) + "\" y2=\"" + number(y2) + "\"/>";
    }

    private static String text(double x, double y, String anchor, String words) {
        return "<text fill=\"currentColor\" text-anchor=\"" + anchor + "\" x=\"" + number(x) + "\" y=\"" + number(y)
                + "\">" + Markup.escape(words) + "</text>";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
