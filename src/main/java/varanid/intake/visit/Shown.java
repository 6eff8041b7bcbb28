package varanid.intake.visit;

import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import varanid.intake.platform.time.ReaderDates;

/** The summary as a page shows it, for pages of its own organisation. */
@Component
public class Shown {

    private final SummaryReader summaries;
    private final HandOverTexts texts;

    Shown(SummaryReader summaries, HandOverTexts texts) {
        this.summaries = summaries;
        this.texts = texts;
    }

    /**
     * As of now; empty where the organisation has no such animal.
     *
     * @param dates as its reader writes them
     */
    public Optional<PageView> find(UUID organisationId, ZoneId zone, UUID animalId, ReaderDates dates) {
        return summaries
                .find(organisationId, zone, animalId)
                .map(summary -> PageView.of(summary, Optional.empty(), texts, WeightPlot.SCREEN, dates));
    }
}
