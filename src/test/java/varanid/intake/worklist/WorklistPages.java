package varanid.intake.worklist;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.VaranidIntake;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.MovableClock;
import varanid.intake.service.Organisations;

/**
 * How long a page of each list takes among 100 and among 100,000 animals: over HTTP, from the service with its embedded
 * database, in turn, so that whatever else the machine does hits both alike. No test: it only prints.
 */
final class WorklistPages {

    private static final int FEW = 100;
    private static final int MANY = 100_000;
    private static final int LIMIT = 20;
    private static final int WARM_UP = 150;
    private static final int TIMES = 400;

    /** The lists, and where a deep page begins: after so much of all animals. */
    private static final List<String> LISTS =
            List.of("act-now?", "act-now?only=due&", "act-now?only=overdue&", "rounds?", "rounds?due=true&");

    private WorklistPages() {}

    public static void main(String... arguments) throws Exception {
        Path home = Files.createTempDirectory(Files.createDirectories(Path.of("target")), "benchmark-home-");
        SpringApplicationBuilder service = new SpringApplicationBuilder(VaranidIntake.class);
        try (ConfigurableApplicationContext context =
                service.run("--server.port=0", "--varanid.intake.home=" + home.toAbsolutePath())) {
            measure(context);
        }
    }

    private static void measure(ConfigurableApplicationContext context) {
        LocalDate today =
                LocalDate.ofInstant(context.getBean(MovableClock.class).instant(), ZoneOffset.UTC);
        Keeping few = new Keeping(context, FEW, today);
        Keeping many = new Keeping(context, MANY, today);
        Keeping idle = new Keeping(context, MANY, today.plusDays(200));
        // Late enough for everything to be due: then both have a deep page.
        LocalDate asOf = today.plusDays(40);
        System.out.printf("%-24s %-6s %10s %10s %6s%n", "list, page of " + LIMIT, "page", FEW, MANY, "ratio");
        for (String list : LISTS) {
            for (boolean deep : new boolean[] {false, true}) {
                String path = "/api/v1/worklist/" + list + "limit=" + LIMIT + "&asOf=" + asOf;
                compare(
                        list,
                        deep ? "deep" : "first",
                        few.client,
                        path + (deep ? few.deep(list) : ""),
                        many.client,
                        path + (deep ? many.deep(list) : ""));
            }
        }
        String due = "/api/v1/worklist/rounds?due=true&limit=" + LIMIT + "&asOf=" + today;
        compare("rounds?due=true, none due", "first", few.client, due, idle.client, due);
    }

    private static void compare(String list, String page, Client few, String fewPath, Client many, String manyPath) {
        long[] ofFew = new long[TIMES];
        long[] ofMany = new long[TIMES];
        for (int i = -WARM_UP; i < TIMES; i++) {
            long first = time(few, fewPath);
            long second = time(many, manyPath);
            if (i >= 0) {
                ofFew[i] = first;
                ofMany[i] = second;
            }
        }
        double one = median(ofFew);
        double other = median(ofMany);
        System.out.printf(
                Locale.ROOT, "%-24s %-6s %7.2f ms %7.2f ms %6.2f%n", list, page, one / 1e6, other / 1e6, other / one);
    }

    private static long time(Client client, String path) {
        long start = System.nanoTime();
        Answer answer = client.get(path);
        long took = System.nanoTime() - start;
        if (answer.status() != 200) {
            throw new IllegalStateException(path + ": " + answer.body());
        }
        return took;
    }

    private static double median(long[] times) {
        Arrays.sort(times);
        return times[times.length / 2];
    }

    /** An organisation with so many animals. */
    private static final class Keeping {

        private final JdbcClient jdbc;
        private final Organisations.Organisation organisation;
        private final Client client;
        private final int animals;

        Keeping(ConfigurableApplicationContext context, int animals, LocalDate today) {
            this.jdbc = context.getBean(JdbcClient.class);
            this.organisation =
                    context.getBean("testOrganisations", Organisations.class).create();
            this.client = organisation.keeper();
            this.animals = animals;
            ManyEntries.insert(jdbc, organisation.id(), client.personId(), animals, Math.max(4, animals / 50), today);
        }

        /** The cursor after nearly three quarters of them. */
        String deep(String list) {
            boolean rounds = list.startsWith("rounds");
            String day = list.contains("overdue") ? "due_until" : "due_from";
            String key = rounds ? "rounds_rank, room_name, animal_id" : "act_rank, " + day + ", animal_id";
            List<String> parts = new ArrayList<>(List.of(rounds ? "rounds" : day));
            parts.addAll(jdbc.sql("SELECT " + key + " FROM worklist_entry WHERE organisation_id = ? ORDER BY " + key
                            + " OFFSET ? LIMIT 1")
                    .param(organisation.id())
                    .param(animals * 7 / 10)
                    .query((row, number) -> List.of(row.getString(1), row.getString(2), row.getString(3)))
                    .single());
            String json = "[\"" + String.join("\",\"", parts) + "\"]";
            return "&cursor="
                    + Base64.getUrlEncoder().withoutPadding().encodeToString(json.getBytes(StandardCharsets.UTF_8));
        }
    }
}
