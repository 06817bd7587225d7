package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/**
 * Which statements of a model looks rest on as evidence of some loci.
 *
 * <ol>
 *   <li>All that was seen of an animal at a time is boxes of expressions. One box says something of each locus by itself, so only its loci
 *       among those in question count: a pink-eyed white says "albino", and nothing of what albino hides. Of several boxes all loci count,
 *       if one in question is among them.
 *   <li>Of each trait seen, those of the statements that looks rest on ({@link RestsOn}) count by which a locus that counts is told: the cases
 *       and masks whose conditions read it, directly or by another trait, and the dominance of its alleles, as far as it decides which of the
 *       boxes a pair is in. A case that no such locus decides, such as the hue of a pigmented animal where albino is asked about, does
 *       not count, and nor does which of two pale steps hides the other where an animal is albino.
 * </ol>
 *
 * <p>Not thread-safe.
 */
final class LookBearings {

    private final CompiledModel compiled;
    private final Model model;
    private final Confusions confusions;
    private final Set<String> matter;
    private final Map<View, Set<String>> resting = new HashMap<>();
    private final Set<List<Object>> done = new LinkedHashSet<>();
    private final Map<String, Set<String>> behindTrait = new HashMap<>();
    private final Set<String> statements = new LinkedHashSet<>();
    private final Set<String> loci = new LinkedHashSet<>();

    /**
     * Begins without looks.
     *
     * @param compiled the model
     * @param confusions how often a state is recorded as another
     * @param matter the loci in question
     */
    LookBearings(CompiledModel compiled, Confusions confusions, Set<String> matter) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.confusions = confusions;
        this.matter = matter;
    }

    /** Pointers of the statements that the looks added rest on. */
    Set<String> statements() {
        return statements;
    }

    /** The loci that they say something of, as far as that counts. */
    Set<String> loci() {
        return loci;
    }

    void add(Observation seen) {
        if (!done.add(List.of(seen.stage(), seen.light(), seen.looks()))) {
            return;
        }
        List<String> traits = new ArrayList<>();
        for (String trait : seen.traits()) {
            boolean told = model.rules().containsKey(trait)
                    && !trait.equals(Sex.VARIABLE)
                    && model.catalogue().judgeable(trait, seen.stage()) != Judgeable.NO
                    && model.catalogue().trait(trait).orElseThrow().judgeable(seen.light()) != Judgeable.NO
                    && boxes(seen, List.of(trait)).isPresent();
            if (told) {
                traits.add(trait);
            }
        }
        if (!traits.isEmpty()) {
            boxes(seen, traits).ifPresent(boxes -> add(boxes, traits, seen.stage()));
        }
    }

    private void add(List<WeightedBox> boxes, List<String> traits, LifeStage stage) {
        Set<String> count = counting(boxes, traits);
        loci.addAll(count);
        Set<String> telling = new LinkedHashSet<>();
        count.forEach(locus -> telling.addAll(dominance(model.locus(locus), boxes)));
        for (String trait : count.isEmpty() ? List.<String>of() : traits) {
            for (String pointer : resting(trait, stage)) {
                if (telling.contains(pointer) || tells(pointer, count)) {
                    statements.add(pointer);
                }
            }
        }
    }

    /** What was seen of some traits, as boxes; empty if that is no evidence, or too much to tell. */
    private Optional<List<WeightedBox>> boxes(Observation seen, List<String> traits) {
        Set<Phenotype> looks = new LinkedHashSet<>();
        seen.looks().forEach(look -> looks.add(look.restrictedTo(traits)));
        try {
            return Optional.of(compiled.evidence(List.of(new Reading(seen.stage(), looks)), confusions));
        } catch (ProblemsException | TooLargeException noEvidence) {
            return Optional.empty(); // the engine takes such a record for no evidence, or refuses it
        }
    }

    private Set<String> counting(List<WeightedBox> boxes, List<String> traits) {
        Set<String> named = new LinkedHashSet<>();
        if (boxes.isEmpty()) {
            named.addAll(compiled.lociRead(traits)); // nobody can look so, by whatever any of these says
        }
        boxes.forEach(one -> named.addAll(one.box().names()));
        named.retainAll(model.loci().keySet());
        Set<String> asked = new LinkedHashSet<>(named);
        asked.retainAll(matter);
        return boxes.size() != 1 && !asked.isEmpty() ? named : asked;
    }

    /** What decides in which boxes a pair of alleles is: where that is the same for either allele alone, no matter which one is dominant. */
    private static Set<String> dominance(Locus locus, List<WeightedBox> boxes) {
        Set<String> found = new LinkedHashSet<>();
        for (Sex sex : Sex.values()) {
            Map<String, Set<Set<Integer>>> ofAlleles = new HashMap<>();
            Map<AllelePair, Set<Integer>> where = new LinkedHashMap<>();
            for (AllelePair pair : locus.pairs(sex)) {
                Set<Integer> here = where(locus, locus.expression(pair, sex), boxes);
                where.put(pair, here);
                if (!pair.isHeterozygous()) {
                    pair.alleles()
                            .forEach(one -> ofAlleles
                                    .computeIfAbsent(one.id(), key -> new LinkedHashSet<>())
                                    .add(here));
                }
            }
            where.forEach((pair, here) -> {
                Set<Set<Integer>> all = new LinkedHashSet<>(Set.of(here));
                pair.alleles().forEach(one -> all.addAll(ofAlleles.getOrDefault(one.id(), Set.of())));
                if (!pair.isHeterozygous() || all.size() > 1) {
                    found.addAll(locus.decidedBy(pair, sex));
                }
            });
        }
        return found;
    }

    /** The boxes that allow an expression, by their numbers. */
    private static Set<Integer> where(Locus locus, String expression, List<WeightedBox> boxes) {
        Set<Integer> found = new LinkedHashSet<>();
        for (int i = 0; i < boxes.size(); i++) {
            Allowed allowed = boxes.get(i).box().variables().get(locus.id());
            if (allowed == null || allowed.allows(expression)) {
                found.add(i);
            }
        }
        return found;
    }

    private Set<String> resting(String trait, LifeStage stage) {
        return resting.computeIfAbsent(new View(List.of(trait), stage, Census.CONCEIVED), view -> {
            Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
            compiled.lociRead(view)
                    .forEach(locus ->
                            pairs.put(locus, new ArrayList<>(model.locus(locus).pairs())));
            try {
                return RestsOn.of(compiled, pairs, view).statements();
            } catch (ProblemsException | TooLargeException noEvidence) {
                return Set.of();
            }
        });
    }

    /** Whether a statement bears on how some loci are told. */
    private boolean tells(String pointer, Set<String> count) {
        List<String> names = Pointer.names(pointer);
        return switch (names.get(0)) {
            case "loci" -> false;
            case "masks" -> {
                Mask mask = model.masks().get(names.get(1));
                yield mask == null || reads(mask.when(), count);
            }
            case "traits" -> {
                TraitRule rule = model.rules().get(names.get(1));
                yield rule == null
                        || rule.allCases().stream()
                                .filter(one -> rule.pointer(one).equals(pointer))
                                .anyMatch(one -> reads(one, rule, count));
            }
            default -> true;
        };
    }

    /** What holds otherwise is decided by all that the other cases read. */
    private boolean reads(Case one, TraitRule rule, Set<String> count) {
        boolean left = rule.otherwise().filter(one::equals).isPresent();
        return left
                ? rule.cases().stream().anyMatch(other -> reads(other.when(), count))
                : reads(one.when(), count)
                        || (one.gives() instanceof CaseState.Threshold sum
                                && intersects(sum.doses().keySet(), count));
    }

    private boolean reads(Condition when, Set<String> count) {
        return when.names().stream().anyMatch(name -> intersects(behind(name), count));
    }

    private static boolean intersects(Set<String> some, Set<String> others) {
        return some.stream().anyMatch(others::contains);
    }

    /** The loci that a variable of a condition depends on. */
    private Set<String> behind(String name) {
        if (model.loci().containsKey(name)) {
            return Set.of(name);
        }
        TraitRule rule = model.rules().get(name);
        if (rule == null) {
            return Set.of();
        }
        Set<String> before = behindTrait.get(name);
        if (before == null) {
            before = new LinkedHashSet<>();
            for (Case one : rule.allCases()) {
                for (String inner : one.when().names()) {
                    before.addAll(behind(inner)); // traits read one another in no circle
                }
                if (one.gives() instanceof CaseState.Threshold sum) {
                    before.addAll(sum.doses().keySet());
                }
            }
            behindTrait.put(name, before);
        }
        return before;
    }
}
