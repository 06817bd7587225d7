package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;

/** Random trait rules and masks over given loci. A trait reads loci and the traits drawn before it, so there is no circle. */
final class RandomRules {

    private record Rule(
            String trait, boolean visible, List<String> states, List<Case> cases, Optional<CaseState> rest) {

        boolean progresses() {
            return cases.stream().anyMatch(one -> one.gives() instanceof CaseState.Progression)
                    || rest.filter(CaseState.Progression.class::isInstance).isPresent();
        }
    }

    private final SplittableRandom random;

    /** What a condition may read, with its values: all loci, and the traits drawn so far. */
    private final Map<String, List<String>> variables = new LinkedHashMap<>();

    private final List<Rule> rules = new ArrayList<>();
    private final Map<String, List<String>> visibleStates = new LinkedHashMap<>();
    private final List<Mask> masks = new ArrayList<>();

    /** Draws what cases give; certain states if empty. */
    private final Optional<RandomCases> gives;

    private RandomRules(SplittableRandom random, Optional<RandomCases> gives) {
        this.random = random;
        this.gives = gives;
    }

    /** Rules without chance. */
    static RandomRules draw(SplittableRandom random, List<RandomLocus> loci, int mostTraits) {
        Map<String, List<String>> variables = new LinkedHashMap<>();
        loci.forEach(locus -> variables.put(locus.id(), locus.expressions()));
        return draw(random, variables, mostTraits, Optional.empty());
    }

    /** Rules that read the given variables and the traits drawn before. */
    static RandomRules draw(
            SplittableRandom random, Map<String, List<String>> variables, int mostTraits, Optional<RandomCases> gives) {
        RandomRules drawn = new RandomRules(random, gives);
        drawn.variables.putAll(variables);
        int visible = random.nextInt(1, mostTraits + 1);
        int inner = random.nextInt(3);
        for (int i = 0; i < visible + inner; i++) {
            drawn.rule(i, i < inner);
        }
        if (random.nextInt(4) == 0) {
            drawn.visibleStates.put("trait without rule", List.of("one", "two"));
        }
        int masks = random.nextInt(5);
        for (int i = 0; i < masks; i++) {
            drawn.mask(i, drawn.read());
        }
        drawn.progressing().ifPresent(trait -> drawn.mask(masks, List.of(trait)));
        return drawn;
    }

    /** States of the traits of the catalogue, one of which may have no rule. */
    Map<String, List<String>> visibleStates() {
        return visibleStates;
    }

    /** The masks without any order among them. */
    List<Mask> masks() {
        return masks;
    }

    /** Adds the rules, last drawn first for half of the models, so that traits read both earlier and later ones. */
    void addTo(ModelBuilder builder) {
        List<Rule> order = new ArrayList<>();
        rules.forEach(rule -> order.add(rules.size() % 2 == 0 ? order.size() : 0, rule));
        for (Rule rule : order) {
            builder.trait(rule.trait(), trait -> {
                if (!rule.visible()) {
                    trait.inner(rule.states().toArray(String[]::new));
                }
                rule.cases().forEach(trait::when);
                rule.rest().ifPresent(rest -> trait.otherwise(rest, Optional.empty()));
                if (rule.states().size() == 2) {
                    trait.evidence("study");
                }
            });
        }
    }

    private void rule(int i, boolean inner) {
        String trait = (inner ? "inner " : "trait ") + i;
        List<String> states = new ArrayList<>();
        int count = random.nextInt(2, 4);
        for (int s = 1; s <= count; s++) {
            states.add("state " + s);
        }
        List<Case> cases = new ArrayList<>();
        if (random.nextInt(12) > 0) {
            leaves(new LinkedHashMap<>(), random.nextInt(1, 4), states, cases);
        }
        Optional<CaseState> rest =
                cases.isEmpty() || random.nextInt(5) < 3 ? Optional.of(gives(states)) : Optional.empty();
        rules.add(new Rule(trait, !inner, states, cases, rest));
        variables.put(trait, states);
        if (!inner) {
            visibleStates.put(trait, states);
        }
    }

    /** Splits the values of one variable into two groups, and so on below; each leaf becomes a case or is left out. */
    private void leaves(Map<String, List<String>> box, int depth, List<String> states, List<Case> cases) {
        String variable = RandomLocus.pick(random, new ArrayList<>(variables.keySet()));
        List<String> values = box.getOrDefault(variable, variables.get(variable));
        if (depth == 0 || values.size() < 2) {
            if (random.nextInt(4) > 0) {
                Optional<String> evidence = random.nextInt(5) == 0 ? Optional.of("practice") : Optional.empty();
                cases.add(new Case("case " + (cases.size() + 1), condition(box), gives(states), evidence));
            }
            return;
        }
        List<String> one = proper(values);
        List<String> other = new ArrayList<>(values);
        other.removeAll(one);
        for (List<String> group : List.of(one, other)) {
            Map<String, List<String>> narrower = new LinkedHashMap<>(box);
            narrower.put(variable, group);
            leaves(narrower, depth - 1, states, cases);
        }
    }

    private CaseState gives(List<String> states) {
        return gives.map(cases -> cases.draw(states))
                .orElseGet(() -> new CaseState.Certain(RandomLocus.pick(random, states)));
    }

    /** One variable or two. */
    private List<String> read() {
        List<String> read = new ArrayList<>();
        int count = random.nextInt(1, 3);
        for (int v = 0; v < count; v++) {
            read.add(RandomLocus.pick(random, new ArrayList<>(variables.keySet())));
        }
        return read;
    }

    /** For half of the models that have one, a progressing trait which one more mask is to read. */
    private Optional<String> progressing() {
        List<String> traits =
                rules.stream().filter(Rule::progresses).map(Rule::trait).toList();
        return traits.isEmpty() || random.nextBoolean()
                ? Optional.empty()
                : Optional.of(RandomLocus.pick(random, traits));
    }

    private void mask(int i, List<String> read) {
        Map<String, List<String>> box = new LinkedHashMap<>();
        for (String variable : read) {
            List<String> values = variables.get(variable);
            box.put(variable, values.size() < 2 ? values : proper(values));
        }
        Mask mask = Mask.of("mask " + (i + 1), condition(box));
        Set<String> covered = new LinkedHashSet<>();
        int covers = random.nextInt(1, 4);
        for (int c = 0; c < covers; c++) {
            covered.add(RandomLocus.pick(random, new ArrayList<>(visibleStates.keySet())));
        }
        for (String trait : covered) {
            List<String> states = visibleStates.get(trait);
            if (random.nextInt(5) < 3) {
                mask = mask.covering(trait, RandomLocus.pick(random, states));
            } else {
                Map<String, String> changes = new LinkedHashMap<>();
                proper(states).forEach(own -> changes.put(own, RandomLocus.pick(random, states)));
                mask = mask.covering(trait, Mask.Cover.changing(changes));
            }
        }
        masks.add(mask);
    }

    /** Puts each mask over every later one that covers a trait of its own; what follows by a chain is often left to the chain. */
    List<Mask> ordered(List<Mask> unordered, SplittableRandom choice) {
        int count = unordered.size();
        boolean[][] over = new boolean[count][count];
        List<Set<String>> named = new ArrayList<>();
        unordered.forEach(mask -> named.add(new LinkedHashSet<>()));
        for (int distance = 1; distance < count; distance++) {
            for (int upper = 0; upper + distance < count; upper++) {
                int lower = upper + distance;
                for (int between = upper + 1; between < lower; between++) {
                    over[upper][lower] |= over[upper][between] && over[between][lower];
                }
                Set<String> shared =
                        new LinkedHashSet<>(unordered.get(upper).covers().keySet());
                shared.retainAll(unordered.get(lower).covers().keySet());
                if (over[upper][lower] ? choice.nextInt(4) == 0 : !shared.isEmpty()) {
                    over[upper][lower] = true;
                    named.get(upper).add(unordered.get(lower).id());
                }
            }
        }
        List<Mask> result = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            result.add(unordered.get(i).over(named.get(i).toArray(String[]::new)));
        }
        return result;
    }

    private List<String> proper(List<String> values) {
        List<String> chosen = new ArrayList<>();
        for (String value : values) {
            if (random.nextBoolean()) {
                chosen.add(value);
            }
        }
        return chosen.isEmpty() || chosen.size() == values.size() ? values.subList(0, 1) : chosen;
    }

    /** States about every third variable by its complement. */
    private Condition condition(Map<String, List<String>> box) {
        Condition condition = Condition.always();
        for (Map.Entry<String, List<String>> entry : box.entrySet()) {
            List<String> excluded = new ArrayList<>(variables.get(entry.getKey()));
            excluded.removeAll(entry.getValue());
            boolean complement = !excluded.isEmpty() && random.nextInt(3) == 0;
            condition = condition.and(
                    entry.getKey(),
                    complement
                            ? Allowed.allBut(excluded.toArray(String[]::new))
                            : Allowed.only(entry.getValue().toArray(String[]::new)));
        }
        return condition;
    }
}
