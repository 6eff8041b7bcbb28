package varanid.intake.followup;

import static org.assertj.core.api.Assertions.assertThat;
import static varanid.intake.followup.Story.created;
import static varanid.intake.followup.Story.each;

import biweekly.component.VEvent;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Date;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/**
 * An invented rescue with five animals in three rooms, followed over HTTP until the first of them is released. Every date
 * is worked out by hand from {@code quarantine-policy.yaml}: 90 days for wild animals (after Pasmans et al. 2008, Vet J
 * 175:53-68, from the abstract of a review), where AZA 2007 (second-hand) asks for 30 at least and begins them again with
 * every newcomer; 60 days for one known source, 42 days without mites and 14 between two stool samples are own proposals.
 */
@ServiceTest
@SuppressWarnings("NullAway.Init") // the story's own fields are set on its first day
class NinetyDaysIT {

    private static final String ONE_KNOWN_SOURCE =
            "{\"parents-known\":\"yes\",\"breeder-reachable\":\"yes\",\"hatch-date-known\":\"yes\"}";
    private static final String CAPTIVE = "{\"photographs-in-egg\":\"yes\",\"breeder-reachable\":\"yes\"}";

    @Autowired
    Organisations organisations;

    @Autowired
    MovableClock clock;

    private Story story;
    private String shed;
    private String garage;
    private String hall;
    private String fern;
    private String moss;
    private String sedge;
    private String burr;
    private String reed;
    private String loft;
    private String calendar;
    private Map<String, VEvent> lastFeed;
    private JsonNode nextLook;

    @Test
    void animalsAreFollowedFromArrivalToReleaseAndAPersonKnowsWhatToDoNext() {
        story = new Story(organisations, clock);
        story.day(0, this::threeArrive);
        story.day(1, () -> routine(fern, "52.0"));
        story.day(7, this::aWeekLater);
        story.day(12, this::aSecondAnimalComesIntoTheShed);
        story.day(14, this::theScaleIsTooCoarseToTell);
        story.day(20, this::mitesAndTicksAreSeen);
        story.evening(20, this::readThemWhileTheRoomWaits);
        story.day(21, this::theDateMovesOnWithEveryDayOfWaiting);
        story.day(22, this::theVetSpeaksOfMitesAndTicks);
        story.day(27, this::theTreatmentOfTheMitesEnds);
        story.day(30, () -> sample = story.stool(sedge, 2));
        story.day(33, this::entamoebaIsFoundInTheGarage);
        story.day(34, () -> {
            routine(fern, "58.0");
            sample = story.stool(fern, 1);
        });
        story.day(36, this::aTapewormOnlyAsksForAVetsWord);
        story.day(38, this::theVetSpeaksOfTheTapeworm);
        story.day(40, this::theOrganisationKeepsThemLonger);
        story.day(41, () -> routine(fern, "59.5"));
        story.day(45, this::aSignByAirStopsTheDays);
        story.day(47, this::theTreatmentOfEntamoebaEnds);
        story.day(48, this::theVetSaysThatTheDaysGoOn);
        story.day(50, this::aDeathSeemsExplained);
        story.day(52, this::andIsNot);
        story.day(55, () -> routine(fern, "62.5"));
        story.day(59, () -> routine(fern, "63.5"));
        story.day(60, this::nobodyIsReleasedOnDaySixty);
        story.evening(60, this::readTheThreeDocumentsAloud);
        story.day(62, () -> story.negative(story.stool(fern, 1)));
        story.day(69, () -> routine(fern, "66.0"));
        // 14 days after day 62: just far enough.
        story.day(76, () -> {
            routine(fern, "67.5");
            story.negative(story.stool(fern, 2));
        });
        for (int day = 83; day <= 118; day += 7) {
            int week = (day - 76) / 7;
            story.day(
                    day,
                    () -> routine(
                            fern,
                            new BigDecimal("67.5").add(BigDecimal.valueOf(week)).toPlainString()));
        }
        story.day(90, this::afterNinetyDaysTheDateIsStillThatOfTheClock);
        story.day(120, this::anotherComesIntoTheLoft);
        story.day(121, () -> itsNoseRuns(reed, loft));
        story.day(122, this::aVetAnswersThatItCanWait);
        story.day(123, this::somebodyRepliesThatItCannot);
        story.day(124, this::aNewSignHeadsTheList);
        story.day(125, this::aVetExaminesItAndAnswersAgain);
        story.day(125, this::shedStuckOnTwoToes);
        story.day(130, this::oneIsReleasedAndTheOtherNotYet);
    }

    private String sample = "";

    // ---- the first days

    private void threeArrive() {
        shed = story.room("Shed", "quarantine");
        garage = story.room("Garage", "quarantine");
        hall = story.room("Hall", "residents");
        fern = story.animal("Fern", "W", "{}");
        sedge = story.animal("Sedge", "C", ONE_KNOWN_SOURCE);
        burr = story.animal("Burr", "C", ONE_KNOWN_SOURCE);
        assertThat(story.quarantine(fern).text("/note")).contains("Record the room it stands in");
        story.place(fern, shed);
        story.place(sedge, garage);
        story.place(burr, garage);
        story.look(fern);
        story.weigh(fern, "51.5", "fine", "0.1");
        story.weigh(sedge, "60", "kitchen", "5");
        story.diary(fern, "{\"ate\":\"none\",\"drank\":\"not-seen\",\"demeanour\":\"frantic\"}");
        // 0 + 90
        story.runsUntil(90, fern, shed, "its days count from " + story.words(0), "it takes 90 days");
        assertThat(story.clock(shed).json().get("vetRelease").booleanValue()).isTrue();
        // 0 + 60
        story.runsUntil(60, sedge, garage, "it takes 60 days", "one known source");
        assertThat(dueOn(fern, 1)).containsOnlyKeys("weighing", "re-look", "mite-check");
        // Nobody has looked at them yet.
        assertThat(story.actNow()).contains("Sedge", "Burr").doesNotContain("Fern");
        calendar = story.subscribe(fern);
        lastFeed = story.feed(calendar);
        assertThat(lastFeed).isNotEmpty();
        assertThat(day(review(lastFeed))).isEqualTo(story.date(90));
    }

    /** What is done every week. */
    private void routine(String animal, String grams) {
        story.look(animal);
        story.weigh(animal, grams, "fine", "0.1");
        story.diary(
                animal,
                "{\"ate\":\"some\",\"demeanour\":\"watchful\",\"cleaning\":\"full-clean\",\"miteCheck\":\"none-seen\"}");
    }

    private void aWeekLater() {
        routine(fern, "52.5");
        story.weigh(sedge, "60", "kitchen", "5");
        story.negative(story.stool(fern, 1));
        Map<String, JsonNode> due = dueOn(fern, 7);
        assertThat(due).containsOnlyKeys("weighing", "re-look", "mite-check", "full-clean");
        due.values().forEach(task -> assertThat(task.get("state").stringValue()).isEqualTo("done"));
        assertThat(story.trend(fern).text("/changes/0/text")).isNotBlank();
    }

    private void aSecondAnimalComesIntoTheShed() {
        moss = story.animal("Moss", "C", CAPTIVE);
        Answer preview = story.preview(moss, shed);
        assertThat(preview.json().get("delays")).hasSize(1);
        assertThat(preview.text("/delays/0/animal/name")).isEqualTo("Fern");
        assertThat(preview.text("/delays/0/from")).isEqualTo(story.iso(90));
        // 12 + 90
        assertThat(preview.text("/delays/0/until")).isEqualTo(story.iso(102));
        assertThat(preview.json().at("/delays/0/days").intValue()).isEqualTo(12);
        // Nothing was stored.
        story.runsUntil(90, fern, shed, story.words(0));
        story.place(moss, shed);
        story.look(moss);
        story.runsUntil(102, fern, shed, "its days count from " + story.words(12), "a new animal");
        story.runsUntil(102, moss, shed, "a new animal");
        Map<String, VEvent> feed = story.feed(calendar);
        assertThat(feed.keySet()).containsAll(lastFeed.keySet());
        assertThat(day(review(feed))).isEqualTo(story.date(102));
        assertThat(sequence(review(feed))).isGreaterThan(sequence(review(lastFeed)));
        lastFeed = feed;
    }

    private void theScaleIsTooCoarseToTell() {
        routine(fern, "54.0");
        story.weigh(sedge, "55", "kitchen", "5");
        // 52.5 to 57.5 g after 57.5 to 62.5 g: from -16 % to no change at all.
        assertThat(threshold(sedge, "loss-5-in-7-days")).isEqualTo("cannot-tell");
        assertThat(threshold(sedge, "loss-10-in-30-days")).isEqualTo("cannot-tell");
        assertThat(story.trend(sedge).json().get("whatToDo").toString()).contains("finer");
    }

    // ---- mites

    private void mitesAndTicksAreSeen() {
        Answer look = story.look(fern, "mites", "few", "ticks", "few");
        assertThat(look.text("/isolation/recommended")).isEqualTo("strict");
        // If the treatment ended today: 20 + 90, later than 20 + 42.
        story.waitsNotBefore(110, fern, shed, "the end of treatment: mites", "a vet's word: ticks");
        story.waitsNotBefore(110, moss, shed, "the end of treatment: mites");
        assertThat(story.quarantine(moss).text("/workPlace/place")).isEqualTo("suspect");
        assertThat(each(story.quarantine(fern).json().get("ask"), "/about/name"))
                .containsOnly("Fern");
        Map<String, VEvent> feed = story.feed(calendar);
        assertThat(review(feed).getStatus().isCancelled()).as("no date").isTrue();
        assertThat(sequence(review(feed))).isGreaterThan(sequence(review(lastFeed)));
        lastFeed = feed;
        assertThat(story.actNow()).contains("Fern");
        // The morning after a strict sign, and not on day 23 (12 + 7, and every 4 where isolation is strict).
        nextLook = nextLook(fern);
        assertThat(nextLook.get("due").stringValue()).isEqualTo(story.iso(21));
        assertThat(nextLook.get("latest").stringValue()).isEqualTo(story.iso(21));
        assertThat(day(lookEvent(feed))).isEqualTo(story.date(21));
        assertThat(story.worklistLook("Fern")).isEqualTo(story.iso(21));
        // Nothing was seen at Moss: 12 + 7, and a day of grace.
        assertThat(nextLook(moss).get("due").stringValue()).isEqualTo(story.iso(19));
        // In the other room nothing has changed.
        story.weigh(sedge, "45", "kitchen", "5");
        story.runsUntil(60, sedge, garage, "it takes 60 days");
    }

    private void theDateMovesOnWithEveryDayOfWaiting() {
        story.waitsNotBefore(111, fern, shed, "it waits since " + story.words(20));
        // The plan does not.
        Map<String, VEvent> feed = story.feed(calendar);
        assertThat(feed.keySet()).isEqualTo(lastFeed.keySet());
        feed.forEach((uid, event) ->
                assertThat(day(event)).as(uid).isEqualTo(day(Objects.requireNonNull(lastFeed.get(uid)))));
        assertThat(nextLook(fern)).isEqualTo(nextLook);
        assertThat(story.worklistLook("Fern")).isEqualTo(story.iso(21));
        // 42.5 to 47.5 g after 52.5 to 57.5 g: -9.5 % at the least. After 57.5 to 62.5 g: -17.4 % at the least.
        assertThat(threshold(sedge, "loss-5-in-7-days")).isEqualTo("past");
        assertThat(threshold(sedge, "loss-10-in-30-days")).isEqualTo("past");
        assertThat(threshold(sedge, "loss-20")).isEqualTo("cannot-tell");
    }

    private void theVetSpeaksOfMitesAndTicks() {
        String ticks = story.waiting(shed, "ticks");
        String mites = story.waiting(shed, "mites");
        String goesOn = "{\"kind\":\"vet-spoke\",\"about\":\"%s\",\"ruling\":\"goes-on\"}".formatted(ticks);
        assertThat(story.event(story.keeper, shed, goesOn).isProblem("forbidden"))
                .isTrue();
        story.vetSays(shed, ticks, "goes-on", "removed, nothing else seen");
        story.vetSays(shed, mites, "restarts-after-treatment", "treat all in the room");
        story.waitsNotBefore(112, fern, shed, "the end of treatment: mites");
    }

    private void theTreatmentOfTheMitesEnds() {
        routine(fern, "57.0");
        created(story.event(
                story.keeper,
                shed,
                "{\"kind\":\"treatment-ended\",\"about\":\"%s\"}".formatted(story.waiting(shed, "mites"))));
        // Looked for and not there: by the schedule again, which begins with 27 + 1.
        assertThat(nextLook(fern).get("due").stringValue()).isEqualTo(story.iso(28));
        // 27 + 90; 42 days without mites end on day 69, which is earlier.
        story.runsUntil(117, fern, shed, "its days count from " + story.words(27), "treatment has ended (mites)");
        story.runsUntil(117, moss, shed, "its days count from " + story.words(27));
        Map<String, VEvent> feed = story.feed(calendar);
        assertThat(day(review(feed))).isEqualTo(story.date(117));
        assertThat(review(feed).getStatus() == null || !review(feed).getStatus().isCancelled())
                .isTrue();
        assertThat(sequence(review(feed))).isGreaterThan(sequence(review(lastFeed)));
        lastFeed = feed;
    }

    // ---- the garage

    private void entamoebaIsFoundInTheGarage() {
        story.positive(sample, "entamoeba");
        // 33 + 90, because something contagious was found; 60 no more.
        story.waitsNotBefore(123, sedge, garage, "the end of treatment: Entamoeba", "it takes 90 days");
        story.waitsNotBefore(123, burr, garage, "Entamoeba");
        story.runsUntil(117, fern, shed, story.words(27));
    }

    private void theTreatmentOfEntamoebaEnds() {
        created(story.event(
                story.keeper,
                garage,
                "{\"kind\":\"treatment-ended\",\"about\":\"%s\"}".formatted(story.waiting(garage, "entamoeba"))));
        // 47 + 90
        story.runsUntil(137, sedge, garage, "its days count from " + story.words(47), "Entamoeba");
    }

    private void aDeathSeemsExplained() {
        created(story.keeper.post(
                story.of(burr) + "/departures",
                "{\"because\":\"died\",\"explained\":true,\"reason\":\"a lamp fell on it\"}"));
        story.runsUntil(137, sedge, garage, "its days count from " + story.words(47));
        assertThat(story.clock(garage).text("/openQuestions/0/cause")).isEqualTo("explained-death");
        assertThat(story.quarantine(sedge).text("/ask/0/text")).contains("a death that seems explained", "vet");
        assertThat(story.quarantine(burr).text("/where")).isEqualTo("gone");
        assertThat(story.actNow()).doesNotContain("Burr");
    }

    private void andIsNot() {
        String wrong = story.keeper.get(story.of(burr) + "/placements").text("/items/1/id");
        created(story.keeper.post(
                story.of(burr) + "/placement-withdrawals",
                "{\"about\":\"%s\",\"reason\":\"the post-mortem found something else\"}".formatted(wrong)));
        created(story.keeper.post(
                story.of(burr) + "/departures",
                "{\"because\":\"died\",\"explained\":false,\"on\":\"%s\"}".formatted(story.iso(50))));
        // 50 + 90, from the day of the death and not from that on which it was known
        story.runsUntil(140, sedge, garage, "its days count from " + story.words(50), "a death nobody can explain");
        assertThat(story.clock(garage).json().get("openQuestions")).isEmpty();
        assertThat(story.clock(garage).json().get("withdrawn")).isNotEmpty();
    }

    // ---- the shed goes on

    private void aTapewormOnlyAsksForAVetsWord() {
        story.positive(sample, "tapeworm");
        story.runsUntil(117, fern, shed, "its days count from " + story.words(27));
        assertThat(story.clock(shed).text("/openQuestions/0/cause")).isEqualTo("tapeworm");
        assertThat(story.states(fern)).containsEntry("vets-word", "unmet");
    }

    private void theVetSpeaksOfTheTapeworm() {
        story.vetSays(shed, story.waiting(shed, "tapeworm"), "goes-on", "needs another host");
        story.runsUntil(117, fern, shed, story.words(27));
        assertThat(story.states(fern)).containsEntry("vets-word", "met");
    }

    private void theOrganisationKeepsThemLonger() {
        String longer = "{\"kind\":\"lengthened\",\"days\":%d,\"reason\":\"mites in spring\"}";
        assertThat(story.event(story.keeper, shed, longer.formatted(4000)).faults())
                .containsExactly("#/days");
        created(story.event(story.keeper, shed, longer.formatted(100)));
        // 27 + 100
        story.runsUntil(127, fern, shed, "it takes 100 days: mites in spring");
        created(story.event(story.keeper, shed, longer.formatted(30)));
        story.runsUntil(127, fern, shed, "it takes 100 days: mites in spring");
    }

    private void aSignByAirStopsTheDays() {
        Answer look = story.look(fern, "nasal-discharge", "clear");
        assertThat(story.keeper
                        .get(story.of(fern) + "/assessments/" + look.id() + "/comparison")
                        .json()
                        .at("/call/needed")
                        .booleanValue())
                .isTrue();
        story.waitsNotBefore(127, fern, shed, "a vet's word", "strict isolation by air");
        assertThat(story.quarantine(fern).text("/isolation")).isEqualTo("strict");
        // The morning after, and not on day 48 (27 + 21).
        assertThat(nextLook(fern).get("due").stringValue()).isEqualTo(story.iso(46));
    }

    private void theVetSaysThatTheDaysGoOn() {
        routine(fern, "61.0");
        story.waitsNotBefore(130, fern, shed, "a vet's word");
        story.vetSays(shed, story.waiting(shed, "air-sign"), "goes-on", "water in the nose");
        // 127 + 3: days 45, 46 and 47 did not count.
        story.runsUntil(130, fern, shed, "3 days from " + story.words(45) + " did not count");
        // Its nose was looked at today and is clean: 27 + 28.
        assertThat(nextLook(fern).get("due").stringValue()).isEqualTo(story.iso(55));
    }

    // ---- release

    private void nobodyIsReleasedOnDaySixty() {
        assertThat(story.states(fern))
                .isEqualTo(Map.of(
                        "minimum-stay", "unmet",
                        "vets-word", "met",
                        "stool-negative", "unmet",
                        "mite-free", "unmet",
                        "last-look", "met",
                        "weight", "met",
                        "treatment-ended", "met",
                        "vet-approval", "unmet"));
        // mites were seen on day 20; 20 + 42
        assertThat(story.open(fern, "mite-free")).contains(story.words(62));
        assertThat(story.open(fern, "minimum-stay")).contains(story.words(130));
        assertThat(story.open(fern, "stool-negative")).contains("2 negative");
        assertThat(story.open(fern, "vet-approval")).contains("approval");
        assertThat(story.keeper
                        .post(story.of(fern) + "/release-decisions", "{}")
                        .faults())
                .containsExactlyInAnyOrder(
                        "#/overrides/minimum-stay",
                        "#/overrides/stool-negative",
                        "#/overrides/mite-free",
                        "#/overrides/vet-approval");
        assertThat(story.quarantine(fern).text("/where")).isEqualTo("in-quarantine");
        assertThat(story.feed(calendar).keySet()).containsAll(lastFeed.keySet());
    }

    private void afterNinetyDaysTheDateIsStillThatOfTheClock() {
        story.runsUntil(130, fern, shed, "its days count from " + story.words(27), "it takes 100 days");
        story.runsUntil(140, sedge, garage, "a death nobody can explain");
        assertThat(story.states(fern))
                .containsEntry("minimum-stay", "unmet")
                .containsEntry("stool-negative", "met")
                .containsEntry("mite-free", "met");
    }

    // ---- what a vet answers

    private void anotherComesIntoTheLoft() {
        loft = story.room("Loft", "quarantine");
        reed = story.animal("Reed", "C", ONE_KNOWN_SOURCE);
        story.place(reed, loft);
        story.look(reed);
        story.runsUntil(180, reed, loft, "it takes 60 days");
    }

    private void itsNoseRuns(String animal, String room) {
        story.look(animal, "nasal-discharge", "clear");
        // 120 + 90: something contagious is suspected.
        story.waitsNotBefore(210, animal, room, "a vet's word");
        assertThat(nextLook(animal).get("due").stringValue()).isEqualTo(story.iso(122));
        assertThat(story.quarantine(animal).text("/isolation")).isEqualTo("strict");
    }

    private void aVetAnswersThatItCanWait() {
        story.vetAnswers(
                reed,
                "\"sawAnimal\":\"heard-of\",\"urgency\":\"routine\",\"isolation\":\"standard\",\"quarantineUntil\":\"%s\",\"nextVisit\":\"%s\",\"rulings\":[{\"cause\":\"air-sign\",\"ruling\":\"goes-on\"}]"
                        .formatted(story.iso(190), story.iso(128)));
        // Without the answer 120 + 90 + 1, for day 121 did not count. Reed is alone in the loft.
        story.runsUntil(190, reed, loft, "Vera Vet, Pond Street answered: not before " + story.words(190));
        Answer shown = story.quarantine(reed);
        assertThat(shown.text("/isolation")).isEqualTo("standard");
        assertThat(shown.text("/urgency")).isEqualTo("routine");
        assertThat(shown.text("/urgencyBy")).isEqualTo("vet");
        // By the schedule again, 120 + 3.
        assertThat(nextLook(reed).get("due").stringValue()).isEqualTo(story.iso(123));
        assertThat(dueOn(reed, 128)).containsKey("vet-visit");
        assertThat(day(visit())).isEqualTo(story.date(128));
        assertThat(story.states(reed)).containsEntry("nothing-new-since-vet", "met");
    }

    private void somebodyRepliesThatItCannot() {
        story.somebodyReplies(
                reed,
                "\"sawAnimal\":\"examined\",\"urgency\":\"asap\",\"isolation\":\"strict\",\"approvesRelease\":true,\"quarantineUntil\":\"%s\",\"nextVisit\":\"%s\""
                        .formatted(story.iso(200), story.iso(126)));
        story.runsUntil(200, reed, loft, "not before " + story.words(200));
        Answer shown = story.quarantine(reed);
        assertThat(shown.text("/isolation")).isEqualTo("strict");
        assertThat(shown.text("/urgency")).isEqualTo("asap");
        assertThat(shown.text("/workPlace/place")).isEqualTo("sick");
        assertThat(day(visit())).isEqualTo(story.date(126));
        // That one neither says that it was examined nor that it may be released.
        assertThat(story.states(reed))
                .containsEntry("nothing-new-since-vet", "unknown")
                .containsEntry("vet-approval", "unmet");
    }

    private void aNewSignHeadsTheList() {
        story.look(reed, "laboured-breathing", "marked");
        assertThat(story.actNow().get(0)).isEqualTo("Reed");
        assertThat(story.whyFirst().get(0)).startsWith("New since the vet's answer: call.");
        Answer shown = story.quarantine(reed);
        assertThat(shown.text("/urgency")).isEqualTo("stat");
        assertThat(shown.text("/alert")).startsWith("New since the vet's answer: call.");
        assertThat(nextLook(reed).get("due").stringValue()).isEqualTo(story.iso(125));
        // 120 + 90 + 1: what is contagious asks for more than the 79 days up to day 200.
        story.waitsNotBefore(211, reed, loft, "a vet's word");
        assertThat(story.states(reed)).containsEntry("nothing-new-since-vet", "unmet");
    }

    private void aVetExaminesItAndAnswersAgain() {
        story.vetAnswers(
                reed,
                "\"sawAnimal\":\"examined\",\"urgency\":\"urgent\",\"isolation\":\"strict\",\"quarantineUntil\":\"%s\",\"rulings\":[{\"cause\":\"air-sign\",\"ruling\":\"goes-on\"}]"
                        .formatted(story.iso(195)));
        // Days 121 and 124 did not count.
        story.runsUntil(195, reed, loft, "1 day from " + story.words(121), "1 day from " + story.words(124));
        Answer shown = story.quarantine(reed);
        assertThat(shown.text("/urgency")).isEqualTo("urgent");
        assertThat(shown.json().has("alert")).isFalse();
        assertThat(shown.text("/isolation")).isEqualTo("strict");
        assertThat(story.states(reed)).containsEntry("nothing-new-since-vet", "met");
        // A day early, and seen by a vet who is one.
        assertThat(visit().getAlarms()).isEmpty();
    }

    private VEvent visit() {
        return story.feed(story.subscribe(reed)).entrySet().stream()
                .filter(entry -> entry.getKey().equals(reed + ".vet-visit.1@varanid-intake"))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow();
    }

    private void shedStuckOnTwoToes() {
        story.look(fern, "stuck-shed", "patches");
        story.weigh(fern, "74.0", "fine", "0.1");
        story.diary(fern, "{\"miteCheck\":\"none-seen\",\"demeanour\":\"calm\"}");
        String approvals = story.of(fern) + "/release-approvals";
        assertThat(story.keeper.post(approvals, "{\"approves\":true}").isProblem("forbidden"))
                .isTrue();
        created(story.vet.post(approvals, "{\"approves\":true,\"note\":\"from its day on\"}"));
    }

    private void oneIsReleasedAndTheOtherNotYet() {
        String decisions = story.of(fern) + "/release-decisions";
        assertThat(story.keeper
                        .post(decisions, "{\"roomId\":\"%s\"}".formatted(hall))
                        .faults())
                .containsExactly("#/overrides/last-look");
        Answer decided = created(story.keeper.post(
                decisions,
                "{\"roomId\":\"%s\",\"overrides\":{\"last-look\":\"a patch of old skin on two toes, seen by the vet\"}}"
                        .formatted(hall)));
        assertThat(decided.text("/decidedBy")).isEqualTo(story.keeper.personId().toString());
        assertThat(decided.text("/decidedByName")).isEqualTo("Kim Keeper");
        assertThat(decided.text("/overrides/last-look")).contains("two toes");
        assertThat(decided.json().get("review").toString()).contains("approved by Vera Vet on " + story.words(125));
        assertThat(story.quarantine(fern).text("/where")).isEqualTo("resident");
        assertThat(story.quarantine(fern).text("/roomName")).isEqualTo("Hall");
        assertThat(story.feed(calendar).values())
                .noneMatch(event ->
                        (event.getStatus() == null || !event.getStatus().isCancelled())
                                && !event.getAlarms().isEmpty());

        // The days of Moss are counted too, but nobody has looked, weighed or sampled since day 12.
        story.runsUntil(130, moss, shed, "its days count from " + story.words(27));
        assertThat(story.states(moss))
                .containsEntry("minimum-stay", "met")
                .containsEntry("stool-negative", "unmet")
                .containsEntry("last-look", "unknown")
                .containsEntry("weight", "unknown")
                .containsEntry("vet-approval", "unmet");
        assertThat(story.keeper
                        .post(story.of(moss) + "/release-decisions", "{}")
                        .faults())
                .contains("#/overrides/stool-negative", "#/overrides/last-look");
        assertThat(story.quarantine(moss).text("/where")).isEqualTo("in-quarantine");
    }

    // ---- reading

    private void readTheThreeDocumentsAloud() {
        System.out.println(Documents.of(story, fern));
    }

    private void readThemWhileTheRoomWaits() {
        String documents = Documents.of(story, fern);
        System.out.println(documents);
        assertThat(documents)
                .contains("ask: Fern: Mites: ", "ask: Fern: Ticks: ", "sign: Mites: ", "sign: Ticks: ")
                .doesNotContainIgnoringCase("healthy");
    }

    private Map<String, JsonNode> dueOn(String animal, int day) {
        return StreamSupport.stream(
                        story.quarantine(animal).json().at("/plan/tasks").spliterator(), false)
                .filter(task -> task.get("due").stringValue().equals(story.iso(day)))
                .collect(Collectors.toMap(task -> task.get("kind").stringValue(), task -> task));
    }

    /** The first that is to be done. */
    private JsonNode nextLook(String animal) {
        return StreamSupport.stream(
                        story.quarantine(animal).json().at("/plan/tasks").spliterator(), false)
                .filter(task -> task.get("kind").stringValue().equals("re-look"))
                .filter(task ->
                        Set.of("open", "overdue").contains(task.get("state").stringValue()))
                .findFirst()
                .orElseThrow();
    }

    /** The entry of that very task. */
    private VEvent lookEvent(Map<String, VEvent> feed) {
        return feed.entrySet().stream()
                .filter(entry -> entry.getKey()
                        .endsWith(".re-look." + nextLook.get("ordinal").intValue() + "@varanid-intake"))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow();
    }

    private String threshold(String animal, String id) {
        return StreamSupport.stream(story.trend(animal).json().get("thresholds").spliterator(), false)
                .filter(each -> each.get("threshold").stringValue().equals(id))
                .map(each -> each.get("state").stringValue())
                .findFirst()
                .orElseThrow();
    }

    private static VEvent review(Map<String, VEvent> feed) {
        return feed.values().stream()
                .filter(event -> event.getSummary().getValue().contains("conditions of release"))
                .findFirst()
                .orElseThrow();
    }

    private static int sequence(VEvent event) {
        return event.getSequence().getValue();
    }

    private static LocalDate day(VEvent event) {
        Date start = event.getDateStart().getValue();
        return LocalDate.parse(new java.text.SimpleDateFormat("yyyy-MM-dd").format(start));
    }
}
