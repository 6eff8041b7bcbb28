package varanid.intake.cagecard;

import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import varanid.intake.account.OwnOrganisation;
import varanid.intake.animal.Animals;
import varanid.intake.platform.time.Present;
import varanid.intake.quarantine.ClockReading;
import varanid.intake.quarantine.FollowUp;
import varanid.intake.quarantine.FollowUps;
import varanid.intake.report.Reports;
import varanid.intake.report.Standing;
import varanid.intake.report.Told;
import varanid.intake.visit.Heads;

/** Makes the card of an animal from what is recorded of it. */
@Service
class CageCards {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final String HELD = "held";

    private final Animals animals;
    private final Heads heads;
    private final FollowUps followUps;
    private final Reports reports;
    private final OwnOrganisation house;
    private final CardWords words;

    CageCards(
            Animals animals,
            Heads heads,
            FollowUps followUps,
            Reports reports,
            OwnOrganisation house,
            CardWords words) {
        this.animals = animals;
        this.heads = heads;
        this.followUps = followUps;
        this.reports = reports;
        this.house = house;
        this.words = words;
    }

    /**
     * The card as of now; empty where the organisation has no such animal.
     *
     * @param address of the animal's page
     */
    Optional<CageCard> find(UUID organisationId, Present present, UUID animalId, URI address) {
        return animals.find(organisationId, animalId)
                .flatMap(animal -> followUps
                        .find(organisationId, present.zone(), animalId, present.today())
                        .map(followUp -> card(organisationId, present, animal, followUp, address)));
    }

    private CageCard card(UUID organisation, Present present, Animals.Newcomer animal, FollowUp followUp, URI address) {
        Instant now = present.now();
        ZoneId zone = present.zone();
        LocalDate today = present.today();
        Heads.Head head = heads.read(organisation, zone, animal, now);
        CardRules.Title title = CardRules.title(animal.tag(), animal.name());
        boolean strict =
                CardRules.isStrict(head.isolation(), followUp.isolation().code());
        return new CageCard(
                animal.id(),
                address,
                now,
                zone,
                alerts(head, followUp, followUps.findHold(organisation, animal.id(), today)),
                title.title().orElseGet(() -> words.page("no-name", "id", CardRules.shortId(animal.id()))),
                title.name().orElse(null),
                animal.tag().orElse(null),
                animal.species().orElse(null),
                animal.species().flatMap(words::commonName).orElse(null),
                words.apart(strict),
                room(followUp),
                stay(followUp, today),
                new CageCard.HowSoon(head.urgency().orElse(null), head.headline(), head.from()),
                handling(reports.find(organisation, animal.id())),
                words.beforeOpening(strict),
                house.find(organisation).flatMap(OwnOrganisation.Known::toCall).orElse(null));
    }

    /** That it has left, what cannot wait, what is new since a vet answered, that an authority holds it. */
    private List<CageCard.Line> alerts(Heads.Head head, FollowUp followUp, Optional<FollowUps.Hold> hold) {
        List<CageCard.Line> alerts = new ArrayList<>();
        if (followUp.where() == FollowUp.Where.GONE) {
            alerts.add(words.alert("gone"));
        }
        if (head.urgency().filter(CardRules.STAT::equals).isPresent()) {
            alerts.add(words.alert(CardRules.STAT, "headline", head.headline()));
        }
        head.alerts().forEach(text -> alerts.add(new CageCard.Line("summary", text, true)));
        hold.filter(it -> it.state().equals(HELD))
                .ifPresent(it -> alerts.add(it.authority()
                        .map(authority -> words.alert(HELD, "authority", authority))
                        .orElseGet(() -> words.alert("held-plain"))));
        return alerts;
    }

    private String room(FollowUp followUp) {
        return followUp.room().map(FollowUp.Place::name).orElseGet(() -> switch (followUp.where()) {
            case NOT_PLACED, IN_QUARANTINE -> words.page("not-placed");
            case RESIDENT -> words.page("with-residents");
            case GONE -> words.page("gone");
        });
    }

    private CageCard.Stay stay(FollowUp followUp, LocalDate today) {
        StayState.Days days = StayState.of(followUp.where(), followUp.clock().map(ClockReading::standing), today);
        boolean vet = followUp.clock()
                .map(clock -> clock.vetRelease() || !clock.openQuestions().isEmpty())
                .orElse(false);
        String state = days.state().code();
        CardWords.StayTexts texts = words.stay(
                days.state() == StayState.RUNNING && vet ? state + "-vet" : state,
                "start",
                text(days.start()),
                "day",
                text(days.notBefore()));
        return new CageCard.Stay(state, days.start(), days.notBefore(), texts.start(), texts.release());
    }

    private static String text(@Nullable LocalDate day) {
        return day == null ? "" : DAY.format(day);
    }

    private List<CageCard.Line> handling(Standing told) {
        Standing.@Nullable Said<Told.Coded> risk = told.handlingRisk();
        int hurt = told.bites().size();
        List<CageCard.Line> lines = new ArrayList<>();
        CardRules.handling(risk == null ? null : risk.value().code(), hurt)
                .forEach(code -> lines.add(words.told(code, "count", Integer.toString(hurt))));
        lines.addAll(words.handling());
        return lines;
    }
}
