package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Everything that a small model does, found by living every life: each genotype of each sex, at each count of the clocks that tick, in
 * each season, with each outcome of each draw.
 *
 * <p>Counts are followed to {@link #last()}. Supports of chains of three states recur long before.
 */
public final class Inspection {

    /** Where a state was met. */
    public static final class Met {
        public final Set<String> sexes = new LinkedHashSet<>();
        /** Whether some animal that can be born has it. */
        public boolean born;

        public final Set<String> seasons = new LinkedHashSet<>();
        public final Map<String, TreeSet<Integer>> counts = new LinkedHashMap<>();
    }

    /** Where each state of each trait was met; of traits that can be seen the state shown, of others the own state. */
    public final Map<String, Map<String, Met>> states = new LinkedHashMap<>();

    /** The pointers of cases and masks that held, of each {@code otherwise} that decided, and of classes of thresholds that were met. */
    public final Set<String> held = new LinkedHashSet<>();

    /** By {@code own trait} and {@code shown trait}, for each sex, season, expressions and draws, whether no state was found. */
    public final Map<String, Map<Map<String, String>, Boolean>> gaps = new LinkedHashMap<>();

    /** By sex, locus and genotype there, all looks of all else, always in the same order. */
    public final Map<String, Map<String, Map<String, List<Object>>>> looks = new LinkedHashMap<>();

    private final Genome genome;
    private final List<String> seasons;
    private final Map<String, Object> traits;
    private final List<String> seen = new ArrayList<>();
    private final Map<String, Object> draws = new LinkedHashMap<>();
    private final Set<String> clocks = new LinkedHashSet<>();
    private final int last;

    /**
     * Prepares to live.
     *
     * @param genome the model
     * @param seasons the seasons there are
     */
    public Inspection(Genome genome, List<String> seasons) {
        this.genome = genome;
        this.seasons = seasons;
        this.traits = Plain.object(genome.model(), "traits");
        traits.forEach((trait, rule) -> {
            if (!Boolean.FALSE.equals(Plain.members(rule).get("visible"))) {
                seen.add(trait);
            }
        });
        Plain.object(genome.model(), "masks")
                .values()
                .forEach(mask -> Plain.object(Plain.members(mask), "covers").keySet().stream()
                        .filter(trait -> !seen.contains(trait))
                        .forEach(seen::add));
        int chains = 0;
        for (Map.Entry<String, Object> one : cases().entrySet()) {
            if (one.getValue() instanceof Map) {
                draws.put(one.getKey(), one.getValue());
                if (Plain.members(one.getValue()).containsKey("progression")) {
                    chains++;
                    clocks.add((String) Plain.object(Plain.members(one.getValue()), "progression")
                            .get("clock"));
                }
            }
        }
        this.last = chains > clocks.size() ? 12 : 8;
    }

    /**
     * Counts the lives there are.
     *
     * @return a measure of the work of {@link #live()}
     */
    public long lives() {
        long lives = 0;
        for (Map<String, String> stage : stages()) {
            for (String sex : List.of("female", "male")) {
                lives += (long) outcomes(stage).size() * genome.genotypes(sex).size();
            }
        }
        return lives;
    }

    /**
     * Lives every life.
     *
     * @return this, with all that was found
     */
    public Inspection live() {
        for (String sex : List.of("female", "male")) {
            for (Map<String, String> stage : stages()) {
                List<Map<String, String>> outcomes = outcomes(stage);
                for (Map<String, String> genotype : genome.genotypes(sex)) {
                    Animal animal = genome.phases(sex, genotype, Map.of()).get(0);
                    outcomes.forEach(drawn -> live(sex, stage, genotype, animal, drawn));
                }
            }
        }
        return this;
    }

    /**
     * Tells how far counts are followed.
     *
     * @return the last count
     */
    public int last() {
        return last;
    }

    /**
     * Tells whether two progressions go by one clock.
     *
     * @return true if their states at one count depend on each other
     */
    public boolean sharesClock() {
        return last == 12;
    }

    /**
     * Tells how long the longest circle of possible states is.
     *
     * @return a number of counts
     */
    public int circle() {
        return last == 12 ? 6 : 3;
    }

    private Map<String, Object> cases() {
        Map<String, Object> cases = new LinkedHashMap<>();
        traits.forEach((trait, rule) -> {
            Plain.object(Plain.members(rule), "cases")
                    .forEach((id, one) -> cases.put("/traits/" + trait + "/cases/" + id, one));
            if (Plain.members(rule).containsKey("otherwise")) {
                cases.put("/traits/" + trait + "/otherwise", Plain.members(rule).get("otherwise"));
            }
        });
        return cases;
    }

    private List<Map<String, String>> stages() {
        List<Map<String, String>> stages = List.of(Map.of());
        for (String clock : clocks) {
            List<String> counts = new ArrayList<>();
            for (int count = 0; count <= last; count++) {
                counts.add(String.valueOf(count));
            }
            stages = times(stages, clock, counts);
        }
        return seasons.isEmpty() ? stages : times(stages, "season", seasons);
    }

    private static List<Map<String, String>> times(List<Map<String, String>> all, String name, List<String> values) {
        List<Map<String, String>> longer = new ArrayList<>();
        for (Map<String, String> one : all) {
            for (String value : values) {
                Map<String, String> next = new LinkedHashMap<>(one);
                next.put(name, value);
                longer.add(next);
            }
        }
        return longer;
    }

    private List<Map<String, String>> outcomes(Map<String, String> stage) {
        List<Map<String, String>> all = List.of(Map.of());
        for (Map.Entry<String, Object> draw : draws.entrySet()) {
            Map<String, Object> given = Plain.members(draw.getValue());
            if (given.containsKey("chance")) {
                all = times(all, draw.getKey(), possible(Plain.object(given, "chance")));
            } else if (given.containsKey("progression")) {
                all = times(all, draw.getKey(), at(Plain.object(given, "progression"), stage));
            } else if (given.containsKey("threshold")
                    && Plain.object(given, "threshold").containsKey("residual")) {
                all = times(all, draw.getKey(), possible(Plain.object(Plain.object(given, "threshold"), "residual")));
            }
        }
        return all;
    }

    private static List<String> possible(Map<String, Object> chances) {
        List<String> possible = new ArrayList<>();
        Plain.chances(chances).forEach((outcome, chance) -> {
            if (!chance.isZero()) {
                possible.add(outcome);
            }
        });
        return possible;
    }

    /** The states that a progression can be in at a stage. */
    private static List<String> at(Map<String, Object> progression, Map<String, String> stage) {
        Set<String> now = new LinkedHashSet<>(possible(Plain.object(progression, "start")));
        int count = Integer.parseInt(stage.get((String) progression.get("clock")));
        for (int i = 0; i < count; i++) {
            Set<String> next = new LinkedHashSet<>();
            for (String state : now) {
                Map<String, Object> rows = Plain.object(progression, "step");
                next.addAll(rows.containsKey(state) ? possible(Plain.object(rows, state)) : List.of(state));
            }
            now = next;
        }
        return new ArrayList<>(now);
    }

    private void live(
            String sex,
            Map<String, String> stage,
            Map<String, String> genotype,
            Animal animal,
            Map<String, String> drawn) {
        Map<String, Object> decided = new LinkedHashMap<>();
        Map<String, String> at = new LinkedHashMap<>();
        at.put("sex", sex);
        Optional.ofNullable(stage.get("season")).ifPresent(season -> at.put("season", season));
        drawn.forEach((pointer, outcome) -> {
            at.put(pointer, outcome);
            Map<String, Object> given = Plain.members(draws.get(pointer));
            if (given.containsKey("progression")) {
                String clock = (String) Plain.object(given, "progression").get("clock");
                decided.put(pointer, Collections.nCopies(Integer.parseInt(stage.get(clock)) + 1, outcome));
            } else {
                decided.put(pointer, outcome);
            }
        });
        genotype.forEach((locus, pair) -> at.put(locus, Life.expression(genome, locus, pair, sex)));
        Life life = new Life(genome, animal, decided);
        boolean born = Plain.object(genome.model(), "viability").values().stream()
                .noneMatch(one -> lethal(Plain.members(one), at));
        rules(life, stage);
        Map<String, String> look = new LinkedHashMap<>();
        for (String trait : seen) {
            Optional<String> shown = life.shown(trait, stage);
            shown.ifPresent(state -> {
                look.put(trait, state);
                met(trait, state, sex, stage, born);
            });
            if (traits.containsKey(trait)) {
                gap("shown " + trait, at, shown.isEmpty());
            }
        }
        for (String trait : traits.keySet()) {
            Optional<String> own = life.own(trait, stage);
            gap("own " + trait, at, own.isEmpty());
            if (!seen.contains(trait)) {
                own.ifPresent(state -> met(trait, state, sex, stage, born));
            }
        }
        genotype.forEach((locus, pair) -> looks.computeIfAbsent(sex, key -> new LinkedHashMap<>())
                .computeIfAbsent(locus, key -> new LinkedHashMap<>())
                .computeIfAbsent(pair, key -> new ArrayList<>())
                .add(look));
    }

    private static boolean lethal(Map<String, Object> viability, Map<String, String> at) {
        return viability.containsKey("birth")
                && Plain.chance(viability.get("birth")).isZero()
                && Plain.list(viability.get("expressions")).contains(at.get((String) viability.get("locus")))
                && viability.getOrDefault("sex", at.get("sex")).equals(at.get("sex"));
    }

    private void gap(String what, Map<String, String> at, boolean open) {
        gaps.computeIfAbsent(what, key -> new LinkedHashMap<>()).put(at, open);
    }

    private void met(String trait, String state, String sex, Map<String, String> stage, boolean born) {
        Met met = states.computeIfAbsent(trait, key -> new LinkedHashMap<>()).computeIfAbsent(state, key -> new Met());
        met.born |= born;
        met.sexes.add(sex);
        Optional.ofNullable(stage.get("season")).ifPresent(met.seasons::add);
        clocks.forEach(clock ->
                met.counts.computeIfAbsent(clock, key -> new TreeSet<>()).add(Integer.parseInt(stage.get(clock))));
    }

    private void rules(Life life, Map<String, String> stage) {
        traits.forEach((trait, rule) -> {
            String pointer = "/traits/" + trait;
            boolean rest = true;
            for (Map.Entry<String, Object> one :
                    Plain.object(Plain.members(rule), "cases").entrySet()) {
                Life.Truth truth = life.truth(Plain.object(Plain.members(one.getValue()), "when"), stage);
                rest &= truth == Life.Truth.FAILS;
                if (truth == Life.Truth.HOLDS) {
                    held(life, trait, pointer + "/cases/" + one.getKey(), one.getValue(), stage);
                }
            }
            if (rest && Plain.members(rule).containsKey("otherwise")) {
                held(life, trait, pointer + "/otherwise", Plain.members(rule).get("otherwise"), stage);
            }
        });
        life.activeMasks(stage).forEach(mask -> held.add("/masks/" + mask));
    }

    private void held(Life life, String trait, String pointer, Object given, Map<String, String> stage) {
        held.add(pointer);
        if (given instanceof Map && Plain.members(given).containsKey("threshold")) {
            String state = life.own(trait, stage).orElseThrow();
            boolean cut = Plain.object(Plain.object(Plain.members(given), "threshold"), "cuts")
                    .containsKey(state);
            held.add(pointer + "/threshold" + (cut ? "/cuts/" + state : "/below"));
        }
    }
}
