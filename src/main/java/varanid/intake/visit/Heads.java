package varanid.intake.visit;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import varanid.intake.animal.Animals;

/** What heads the summary of an animal, for other papers about it: they must not say anything else. */
@Service
public class Heads {

    private final List<AlertReader> alerts;
    private final StandingReader standing;
    private final HandOverTexts texts;

    Heads(List<AlertReader> alerts, StandingReader standing, HandOverTexts texts) {
        this.alerts = List.copyOf(alerts);
        this.standing = standing;
        this.texts = texts;
    }

    /**
     * The head as of a moment.
     *
     * @param zone the organisation's
     */
    @Transactional(readOnly = true)
    public Head read(UUID organisationId, ZoneId zone, Animals.Newcomer animal, Instant now) {
        Visit visit = new Visit(organisationId, zone, animal, now);
        Summary.Standing stands = standing.read(visit);
        return new Head(
                alerts.stream()
                        .flatMap(reader -> reader.read(visit).stream())
                        .map(Summary.Alert::text)
                        .toList(),
                Optional.ofNullable(stands.urgency()),
                stands.headline(),
                texts.word("from", stands.from().code()),
                stands.isolation());
    }

    /**
     * What stands at the top of a summary.
     *
     * @param alerts the weightiest first, for people
     * @param urgency a request-priority code; nothing where nobody has looked and no vet has said how soon
     * @param headline how soon a vet, for people
     * @param from whose word the headline is, for people
     * @param isolation the code: {@code strict} also where nobody has looked
     */
    public record Head(List<String> alerts, Optional<String> urgency, String headline, String from, String isolation) {
        public Head {
            alerts = List.copyOf(alerts);
        }
    }
}
