package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geneticsrules.probability.Probability;

/**
 * One life of one animal, in which chance has decided in one way. What chance decides, it decides once for each case, and the animal
 * keeps it at all stages.
 *
 * <ol>
 *   <li>Dominance, in the sex of the animal: two alleles show what the table says of the pair, else what the dominant one shows; the
 *       same allele twice, and a lone allele of which nothing is tabled, shows what that allele shows.
 *   <li>Conditions are three-valued: a condition fails if any variable has a forbidden value; else it is unknown if any variable
 *       is; else it holds.
 *   <li>Own state: what the case that holds gives; if none holds but some case is unknown, not modelled; if all fail, what the {@code
 *       otherwise} gives, if there is one.
 *   <li>Shown state: a covering mask whose condition is unknown makes the trait not modelled. Of the active masks that cover the
 *       trait, those over which no other active one lies decide. A constant cover shows its state whatever lies beneath; a table
 *       of changes needs the own state.
 * </ol>
 */
public final class Life {

    /** Whether a condition holds. */
    enum Truth {
        HOLDS,
        FAILS,
        UNKNOWN
    }

    private final Genome genome;
    private final Animal animal;
    private final Choices chance;
    private final Map<String, String> expressions = new LinkedHashMap<>();

    /** What chance decided, by the pointer of the case: a state, the states at count 0, 1, .., or a residual. */
    private final Map<String, Object> draws = new LinkedHashMap<>();

    /**
     * Starts a life.
     *
     * @param genome the model
     * @param animal the animal
     * @param chance decides where chance decides
     */
    public Life(Genome genome, Animal animal, Choices chance) {
        this.genome = genome;
        this.animal = animal;
        this.chance = chance;
        genome.genotype(animal)
                .forEach((locus, pair) -> expressions.put(locus, expression(genome, locus, pair, animal.sex())));
    }

    /** A life in which all that chance may decide is decided before it begins. */
    Life(Genome genome, Animal animal, Map<String, Object> draws) {
        this(genome, animal, Choices.none());
        this.draws.putAll(draws);
    }

    // ---- many lives
    // ------------------------------------------------------------------------------------------------------------

    /**
     * Lets an animal live in every way, and looks at it at several stages of the same life.
     *
     * @param genome the model
     * @param animal the animal
     * @param stages the stages
     * @param traits the traits looked at
     * @return the chance of each sequence of looks
     */
    public static Map<List<Map<String, String>>, Probability> histories(
            Genome genome, Animal animal, List<Map<String, String>> stages, List<String> traits) {
        return Choices.all(chance -> {
            Life life = new Life(genome, animal, chance);
            List<Map<String, String>> looks = new ArrayList<>();
            stages.forEach(stage -> looks.add(life.look(stage, traits)));
            return looks;
        });
    }

    /**
     * Lets an animal live in every way, and looks at it once.
     *
     * @param genome the model
     * @param animal the animal
     * @param stage the stage
     * @param traits the traits looked at
     * @return the chance of each look
     */
    public static Map<Map<String, String>, Probability> looks(
            Genome genome, Animal animal, Map<String, String> stage, List<String> traits) {
        return genome.once(
                List.of("looks", animal.sex(), genome.genotype(animal), Map.copyOf(stage), List.copyOf(traits)),
                () -> Choices.all(chance -> new Life(genome, animal, chance).look(stage, traits)));
    }

    /**
     * Weighs what was seen of an animal. A trait about which the model makes no claim is no evidence.
     *
     * @param genome the model
     * @param animal the animal
     * @param sightings what was seen, at one stage or several
     * @return the chance that it shows nothing else
     */
    public static Probability agrees(Genome genome, Animal animal, List<Seen> sightings) {
        return Choices.all(chance -> {
                    Life life = new Life(genome, animal, chance);
                    return sightings.stream().allMatch(seen -> {
                        Map<String, String> shown = life.look(
                                seen.stage(), new ArrayList<>(seen.look().keySet()));
                        return seen.look().entrySet().containsAll(shown.entrySet());
                    });
                })
                .getOrDefault(true, Probability.ZERO);
    }

    // ---- dominance
    // -------------------------------------------------------------------------------------------------------------

    /**
     * Applies dominance.
     *
     * @param genome the model
     * @param locus id of a locus
     * @param pair a genotype of the locus
     * @param sex sex of the animal
     * @return what it shows as
     */
    public static String expression(Genome genome, String locus, String pair, String sex) {
        if (pair.isEmpty()) {
            return (String) genome.locus(locus).get("absent");
        }
        Map<String, Object> dominance = Plain.object(genome.locus(locus), "dominance");
        dominance = dominance.containsKey(sex) ? Plain.object(dominance, sex) : dominance;
        Map<String, Object> shows = Plain.object(dominance, "shows");
        String[] alleles = pair.split("/", -1);
        if (alleles.length == 1) {
            String tabled = pair + (genome.transmission(locus).equals("X") ? "/Y" : "/W");
            boolean partner = List.of("X", "Z").contains(genome.transmission(locus));
            return Plain.textOr(shows.get(partner && shows.containsKey(tabled) ? tabled : pair), "shows");
        }
        String a = alleles[0];
        String b = alleles[1];
        for (String tabled : a.equals(b) ? List.<String>of() : List.of(a + "/" + b, b + "/" + a)) {
            if (shows.containsKey(tabled)) {
                return Plain.textOr(shows.get(tabled), "shows");
            }
        }
        boolean firstShows = a.equals(b) || isDominant(Plain.list(dominance.get("order")), a, b);
        return Plain.textOr(shows.get(firstShows ? a : b), "shows");
    }

    private static boolean isDominant(List<Object> order, String upper, String lower) {
        for (Object statement : order) {
            String[] step = Plain.textOr(statement, "order").split(" > ", -1);
            if (step[0].equals(upper) && (step[1].equals(lower) || isDominant(order, step[1], lower))) {
                return true;
            }
        }
        return false;
    }

    // ---- own states
    // ------------------------------------------------------------------------------------------------------------

    /**
     * Applies the rule of a trait.
     *
     * @param trait id of a trait
     * @param stage when the animal is looked at
     * @return the own state, or empty where it is not modelled
     */
    public Optional<String> own(String trait, Map<String, String> stage) {
        Map<String, Object> rule = Plain.object(Plain.object(genome.model(), "traits"), trait);
        String pointer = "/traits/" + trait;
        boolean unknown = false;
        for (Map.Entry<String, Object> one : Plain.object(rule, "cases").entrySet()) {
            Truth truth = truth(Plain.object(Plain.members(one.getValue()), "when"), stage);
            if (truth == Truth.HOLDS) {
                return Optional.of(gives(one.getValue(), pointer + "/cases/" + one.getKey(), stage));
            }
            unknown = unknown || truth == Truth.UNKNOWN;
        }
        boolean rest = !unknown && rule.containsKey("otherwise");
        return rest ? Optional.of(gives(rule.get("otherwise"), pointer + "/otherwise", stage)) : Optional.empty();
    }

    private String gives(Object given, String pointer, Map<String, String> stage) {
        if (given instanceof String state) {
            return state;
        }
        Map<String, Object> members = Plain.members(given);
        if (members.containsKey("state")) {
            return (String) members.get("state");
        } else if (members.containsKey("chance")) {
            if (!draws.containsKey(pointer)) {
                draws.put(pointer, chance.among(Plain.chances(Plain.object(members, "chance"))));
            }
            return (String) draws.get(pointer);
        } else if (members.containsKey("progression")) {
            return progressed(Plain.object(members, "progression"), pointer, stage);
        }
        return cut(Plain.object(members, "threshold"), pointer);
    }

    /** Walks on from the last count reached so far in this life. */
    @SuppressWarnings("unchecked")
    private String progressed(Map<String, Object> progression, String pointer, Map<String, String> stage) {
        String clock = (String) progression.get("clock");
        if (!stage.containsKey(clock)) {
            throw new IllegalStateException(pointer + " needs the " + clock + ", but the stage is " + stage);
        }
        int count = Integer.parseInt(stage.get(clock));
        List<String> path = (List<String>) draws.computeIfAbsent(pointer, at -> new ArrayList<String>());
        if (path.isEmpty()) {
            path.add(chance.among(Plain.chances(Plain.object(progression, "start"))));
        }
        while (path.size() <= count) {
            String last = path.get(path.size() - 1);
            Map<String, Object> rows = Plain.object(progression, "step");
            path.add(rows.containsKey(last) ? chance.among(Plain.chances(Plain.object(rows, last))) : last);
        }
        return path.get(count);
    }

    private String cut(Map<String, Object> threshold, String pointer) {
        int sum = 0;
        for (Map.Entry<String, Object> locus : Plain.object(threshold, "doses").entrySet()) {
            Object dose = Plain.members(locus.getValue()).getOrDefault(expressions.get(locus.getKey()), 0);
            sum += ((Number) dose).intValue();
        }
        if (threshold.containsKey("residual")) {
            if (!draws.containsKey(pointer)) {
                draws.put(pointer, chance.among(Plain.chances(Plain.object(threshold, "residual"))));
            }
            sum += Integer.parseInt((String) draws.get(pointer));
        }
        TreeMap<Integer, String> states = new TreeMap<>();
        Plain.object(threshold, "cuts").forEach((state, least) -> states.put(((Number) least).intValue(), state));
        return states.floorKey(sum) == null
                ? (String) threshold.get("below")
                : states.floorEntry(sum).getValue();
    }

    Truth truth(Map<String, Object> when, Map<String, String> stage) {
        boolean unknown = false;
        for (Map.Entry<String, Object> variable : when.entrySet()) {
            Optional<String> value = value(variable.getKey(), stage);
            boolean complement = variable.getValue() instanceof Map;
            List<Object> listed =
                    Plain.list(complement ? Plain.members(variable.getValue()).get("not") : variable.getValue());
            if (value.isEmpty()) {
                unknown = true;
            } else if (listed.contains(value.get()) == complement) {
                return Truth.FAILS;
            }
        }
        return unknown ? Truth.UNKNOWN : Truth.HOLDS;
    }

    private Optional<String> value(String variable, Map<String, String> stage) {
        if (variable.equals("sex")) {
            return Optional.of(animal.sex());
        } else if (variable.equals("season")) {
            if (!stage.containsKey("season")) {
                throw new IllegalStateException("a condition needs the season, but the stage is " + stage);
            }
            return Optional.of(stage.get("season"));
        }
        return expressions.containsKey(variable) ? Optional.of(expressions.get(variable)) : own(variable, stage);
    }

    // ---- shown states
    // ----------------------------------------------------------------------------------------------------------

    /**
     * Lists the masks that are active.
     *
     * @param stage when the animal is looked at
     * @return ids of masks whose condition holds, in declared order
     */
    public List<String> activeMasks(Map<String, String> stage) {
        List<String> active = new ArrayList<>();
        Plain.object(genome.model(), "masks").forEach((id, mask) -> {
            if (truth(Plain.object(Plain.members(mask), "when"), stage) == Truth.HOLDS) {
                active.add(id);
            }
        });
        return active;
    }

    /**
     * Applies the rule of a trait and the masks that cover it.
     *
     * @param trait id of a trait
     * @param stage when the animal is looked at
     * @return the shown state, or empty where it is not modelled
     * @throws IllegalStateException if two masks that decide show different states
     */
    public Optional<String> shown(String trait, Map<String, String> stage) {
        Map<String, Object> masks = Plain.object(genome.model(), "masks");
        List<String> active = new ArrayList<>();
        for (Map.Entry<String, Object> mask : masks.entrySet()) {
            if (Plain.object(Plain.members(mask.getValue()), "covers").containsKey(trait)) {
                Truth truth = truth(Plain.object(Plain.members(mask.getValue()), "when"), stage);
                if (truth == Truth.UNKNOWN) {
                    return Optional.empty();
                } else if (truth == Truth.HOLDS) {
                    active.add(mask.getKey());
                }
            }
        }
        Optional<String> own = own(trait, stage);
        if (active.isEmpty()) {
            return own;
        }
        Set<String> seen = new LinkedHashSet<>();
        for (String mask : active) {
            if (active.stream().noneMatch(other -> isOver(masks, other, mask))) {
                Object cover =
                        Plain.object(Plain.members(masks.get(mask)), "covers").get(trait);
                if (cover instanceof String constant) {
                    seen.add(constant);
                } else {
                    own.ifPresent(
                            state -> seen.add((String) Plain.members(cover).getOrDefault(state, state)));
                }
            }
        }
        if (seen.size() > 1) {
            throw new IllegalStateException("masks " + active + " show " + trait + " as " + seen + " for " + animal);
        }
        return seen.stream().findFirst();
    }

    private static boolean isOver(Map<String, Object> masks, String upper, String lower) {
        return Plain.list(Plain.members(masks.get(upper)).get("over")).stream()
                .anyMatch(next -> next.equals(lower) || isOver(masks, (String) next, lower));
    }

    /**
     * Looks at the animal.
     *
     * @param stage when
     * @param traits the traits looked at
     * @return shown states by trait, in the order asked; a trait that is not modelled here is absent
     */
    public Map<String, String> look(Map<String, String> stage, List<String> traits) {
        Map<String, String> seen = new LinkedHashMap<>();
        for (String trait : traits) {
            shown(trait, stage).ifPresent(state -> seen.put(trait, state));
        }
        return seen;
    }
}
