package varanid.intake.diary;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;

/** An entry that is to be kept, as it was sent. */
record NewDiaryEntry(
        Instant occurredAt,
        @Nullable Ate ate,
        @Nullable String food,
        @Nullable Noticed drank,
        @Nullable Noticed stool,
        @Nullable Noticed urate,
        @Nullable Seen seen,
        @Nullable Demeanour demeanour,
        @Nullable Cleaning cleaning,
        @Nullable MiteCheck miteCheck,
        @Nullable String note,
        @Nullable UUID supersedes) {

    private static final List<String> ANY_OF =
            List.of("ate", "drank", "passed", "seen", "demeanour", "cleaning", "miteCheck", "note");

    private record Passed(@Nullable Noticed stool, @Nullable Noticed urate) {}

    static Supplier<NewDiaryEntry> read(JsonFields fields, Present present) {
        Given<Ate> ate = fields.choice("ate", List.of(Ate.values()), Ate::code);
        Given<String> food = fields.text("food", 200);
        Given<Noticed> drank = noticed(fields, "drank");
        Given<Passed> passed = fields.object("passed", NewDiaryEntry::readPassed);
        Given<Seen> seen = fields.choice("seen", List.of(Seen.values()), Seen::code);
        Given<Demeanour> demeanour = fields.choice("demeanour", List.of(Demeanour.values()), Demeanour::code);
        Given<Cleaning> cleaning =
                fields.choice("cleaning", List.of(Cleaning.SPOT_CLEAN, Cleaning.FULL_CLEAN), Cleaning::code);
        Given<MiteCheck> miteCheck =
                fields.choice("miteCheck", List.of(MiteCheck.NONE_SEEN, MiteCheck.SEEN), MiteCheck::code);
        Given<String> note = fields.prose("note", 2000);
        Given<Instant> occurredAt = fields.pastInstant("occurredAt", present);
        Given<UUID> supersedes = fields.id("supersedes");
        if (food.isGiven()) {
            boolean offered = ate.find()
                    .map(it -> it != Ate.NOT_OFFERED)
                    .orElse(fields.field("ate").isGiven());
            if (!offered) {
                food.fault("is named, and ate does not say that any was offered", "ate: all, some or none");
            }
        }
        if (ANY_OF.stream().noneMatch(name -> fields.field(name).isGiven())) {
            fields.fault("says nothing", "at least one of " + String.join(", ", ANY_OF));
        }
        return () -> {
            Passed what = passed.orElse(new Passed(null, null));
            return new NewDiaryEntry(
                    occurredAt.orElse(present.now()),
                    ate.orNull(),
                    food.orNull(),
                    drank.orNull(),
                    what.stool(),
                    what.urate(),
                    seen.orNull(),
                    demeanour.orNull(),
                    cleaning.orNull(),
                    miteCheck.orNull(),
                    note.orNull(),
                    supersedes.orNull());
        };
    }

    private static Supplier<Passed> readPassed(JsonFields fields) {
        Given<Noticed> stool = noticed(fields, "stool");
        Given<Noticed> urate = noticed(fields, "urate");
        if (!fields.field("stool").isGiven() && !fields.field("urate").isGiven()) {
            fields.fault("says nothing", "stool, urate or both");
        }
        return () -> new Passed(stool.orNull(), urate.orNull());
    }

    private static Given<Noticed> noticed(JsonFields fields, String name) {
        return fields.choice(name, List.of(Noticed.values()), Noticed::code);
    }
}
