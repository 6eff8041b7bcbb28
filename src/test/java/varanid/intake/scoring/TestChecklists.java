package varanid.intake.scoring;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import varanid.intake.checklist.ChecklistReader;

/** The checklists that the tests score by, and how much of each law they try. */
final class TestChecklists {

    static final Checklist REAL = read("/shared/checklists/varanid-intake.v1.yaml");
    static final Checklist EARLY_WARNING = read("/charts/early-warning.yaml");
    static final Checklist NEWBORN = read("/charts/newborn.yaml");

    private TestChecklists() {}

    /** Seeded cases for each law; {@code -Dlaws.cases=1000000} is the full run. */
    static int cases() {
        return Integer.getInteger("laws.cases", 20_000);
    }

    /** Fewer cases for laws of which one case costs a hundred times as much; never fewer than 50. */
    static int costlyCases() {
        return Math.max(50, cases() / 100);
    }

    private static Checklist read(String resource) {
        try (InputStream in = Objects.requireNonNull(TestChecklists.class.getResourceAsStream(resource), resource)) {
            return new ChecklistReader().read(resource, in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
