package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/**
 * By which masks an animal may show a state, another state being hidden beneath.
 *
 * <ol>
 *   <li>Expressions are combined at the loci that the trait reads, as far as records leave them at each, and for each combination every way
 *       is gone through in which chance may decide. Where a mask makes what is seen, that is a candidate.
 *   <li>A candidate counts if earlier looks at the animal allow it: with what would be seen then of the trait, of those that decide whether
 *       such masks are there, and of those seen earlier about which the same chance decides.
 *   <li>And it counts only if the records of relatives allow it too: the combination is put into the pedigree as tests that are never wrong,
 *       and what is seen as a look. One combination that fits is enough.
 * </ol>
 *
 * <p>No mask is missed. Where the animal was looked at before, a mask may be told too many: one that only a state which is itself hidden
 * beneath another mask would rule out.
 *
 * <p>Not thread-safe.
 */
final class Covering {

    private static final int MOST_COMBINATIONS = 5_000;

    /** How often the records are asked, for one trait. */
    private static final int MOST_ASKED = 300;

    private final Ground ground;
    private final Pedigree kindred;
    private final Individual animal;
    private final LifeStage stage;
    private final Function<String, List<AllelePair>> left;

    /** What was seen of the animal, as far as that is evidence. */
    private final List<Reading> before = new ArrayList<>();

    /** Whether nothing is recorded by which a candidate could be ruled out. */
    private final boolean anything;

    private int asked;

    /**
     * Prepares the question.
     *
     * @param left the genotypes that records leave at a locus
     */
    Covering(
            Ground ground,
            Pedigree kindred,
            Individual animal,
            LifeStage stage,
            Function<String, List<AllelePair>> left) {
        this.ground = ground;
        this.kindred = kindred;
        this.animal = animal;
        this.stage = stage;
        this.left = left;
        animal.observations().forEach(seen -> counting(seen).ifPresent(before::add));
        this.anything = kindred.individuals().size() == 1
                && animal.observations().isEmpty()
                && animal.tests().isEmpty();
    }

    /**
     * Finds the masks.
     *
     * @param trait id of a trait
     * @param states states that the animal may show
     * @return by state, ids of masks in declared order; empty if it was too much to find out
     */
    Optional<Map<String, Set<String>>> masks(String trait, Collection<String> states) {
        Map<String, Set<String>> wanted = wanted(trait, states);
        Map<String, Set<String>> found = new LinkedHashMap<>();
        asked = 0;
        try {
            View view = view(trait);
            for (Sex sex : PlannedMating.sex(kindred, animal.id())
                    .map(Set::of)
                    .orElseGet(() -> Set.of(Sex.FEMALE, Sex.MALE))) {
                for (Map<String, String> one : combinations(view, sex)) {
                    if (wanted.isEmpty()) {
                        return Optional.of(inOrder(found));
                    }
                    search(trait, view, sex, one, wanted, found);
                }
            }
            return Optional.of(inOrder(found));
        } catch (TooLargeException manyWays) {
            return Optional.empty();
        }
    }

    /** The masks that can make each state. */
    private Map<String, Set<String>> wanted(String trait, Collection<String> states) {
        Map<String, Set<String>> wanted = new LinkedHashMap<>();
        for (Mask mask : model().masks().values()) {
            Mask.Cover cover = mask.covers().get(trait);
            if (cover != null) {
                states.stream()
                        .filter(state -> makes(cover, state))
                        .forEach(state -> wanted.computeIfAbsent(state, key -> new LinkedHashSet<>())
                                .add(mask.id()));
            }
        }
        return wanted;
    }

    private static boolean makes(Mask.Cover cover, String state) {
        return cover.constant().map(state::equals).orElse(cover.changes().containsValue(state));
    }

    private Map<String, Set<String>> inOrder(Map<String, Set<String>> found) {
        Map<String, Set<String>> ordered = new LinkedHashMap<>();
        found.forEach((state, masks) -> {
            Set<String> all = new LinkedHashSet<>(model().masks().keySet());
            all.retainAll(masks);
            ordered.put(state, all);
        });
        return ordered;
    }

    /** A look without the traits that could not be told then. */
    private Optional<Reading> counting(Observation seen) {
        WhenTold told = new WhenTold(ground, seen.stage());
        List<String> traits = seen.traits().stream()
                .filter(model().rules()::containsKey)
                .filter(trait -> !told.isTooEarly(trait) && told.lacking(trait).isEmpty())
                .filter(trait -> model().catalogue().trait(trait).orElseThrow().judgeable(seen.light()) != Judgeable.NO)
                .toList();
        Set<Phenotype> looks = new LinkedHashSet<>();
        seen.looks().forEach(look -> looks.add(look.restrictedTo(traits)));
        return traits.isEmpty() ? Optional.empty() : Optional.of(new Reading(seen.stage(), looks));
    }

    private Model model() {
        return ground.model();
    }

    /** The trait, and those that decide whether it is covered, as far as they can be seen at the stage. */
    private View view(String trait) {
        Set<String> traits = new LinkedHashSet<>(Set.of(trait));
        for (Mask mask : model().masks().values()) {
            if (mask.covers().containsKey(trait)) {
                mask.when().names().stream()
                        .filter(model().visibleTraits()::contains)
                        .forEach(traits::add);
            }
        }
        traits.addAll(new LookLoci(ground.compiled(), animal).sharing(trait));
        View all = new View(new ArrayList<>(traits), stage, Census.CONCEIVED);
        try {
            ground.compiled().diagram(all);
            return all;
        } catch (ProblemsException | TooLargeException notAllToldThen) {
            return new View(List.of(trait), stage, Census.CONCEIVED);
        }
    }

    /** The expressions that are left, at all loci together. */
    private List<Map<String, String>> combinations(View view, Sex sex) {
        List<Map<String, String>> all = List.of(Map.of());
        for (String id : ground.compiled().lociRead(view)) {
            Locus locus = model().locus(id);
            Set<String> shown = new LinkedHashSet<>();
            left.apply(id).stream()
                    .filter(locus.pairs(sex)::contains)
                    .forEach(pair -> shown.add(locus.expression(pair, sex)));
            if ((long) all.size() * shown.size() > MOST_COMBINATIONS) {
                throw new TooLargeException(
                        "combinations of expressions",
                        (double) all.size() * shown.size(),
                        MOST_COMBINATIONS,
                        "ask about fewer traits.");
            }
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> before : all) {
                for (String expression : shown) {
                    Map<String, String> one = new LinkedHashMap<>(before);
                    one.put(id, expression);
                    longer.add(one);
                }
            }
            all = longer;
        }
        return all;
    }

    private void search(
            String trait,
            View view,
            Sex sex,
            Map<String, String> expressions,
            Map<String, Set<String>> wanted,
            Map<String, Set<String>> found) {
        Set<Phenotype> refused = new LinkedHashSet<>();
        for (Expressed way : ground.compiled()
                .express(expressions, sex, stage, view.traits())
                .outcomes()) {
            TraitTrace trace = way.traits().get(trait);
            String state = trace == null ? "" : trace.shown().orElse("");
            Set<String> open = wanted.get(state);
            if (trace == null || open == null || !trace.isMasked()) {
                continue;
            }
            Set<String> masks = new LinkedHashSet<>(trace.masks());
            masks.retainAll(open);
            if (masks.isEmpty() || refused.contains(way.phenotype())) {
                continue;
            }
            if (!fits(way.phenotype(), sex, expressions)) {
                refused.add(way.phenotype());
                continue;
            }
            found.computeIfAbsent(state, key -> new LinkedHashSet<>()).addAll(masks);
            open.removeAll(masks);
            if (open.isEmpty()) {
                wanted.remove(state);
            }
        }
    }

    private boolean fits(Phenotype look, Sex sex, Map<String, String> expressions) {
        if (anything) {
            return true;
        }
        asked++;
        if (asked > MOST_ASKED) {
            throw new TooLargeException("combinations of expressions", asked, MOST_ASKED, "ask about fewer traits.");
        }
        if (!fitsEarlierLooks(look, sex, expressions)) {
            return false;
        }
        Individual supposed = animal.with(sex).with(Observation.of(stage, look));
        for (Map.Entry<String, String> one : expressions.entrySet()) {
            Locus locus = model().locus(one.getKey());
            Set<String> results = new LinkedHashSet<>();
            boolean all = true;
            for (AllelePair pair : left.apply(one.getKey())) {
                boolean shows = locus.pairs(sex).contains(pair)
                        && locus.expression(pair, sex).equals(one.getValue());
                all &= shows;
                if (shows && !pair.alleles().isEmpty()) {
                    results.add(pair.toString());
                }
            }
            if (!all && !results.isEmpty()) {
                supposed = supposed.with(new GenotypeTest(Optional.empty(), one.getKey(), results, Probability.ZERO));
            }
        }
        return Fits.of(model(), ground.inference(Supposed.put(kindred, supposed)), animal.id(), expressions.keySet())
                == Whether.POSSIBLE;
    }

    private boolean fitsEarlierLooks(Phenotype look, Sex sex, Map<String, String> expressions) {
        List<Reading> all = new ArrayList<>(before);
        all.add(new Reading(stage, Set.of(look)));
        return ground.compiled().evidence(all, ground.confusions()).stream()
                .anyMatch(box -> box.box().variables().entrySet().stream().allMatch(one -> {
                    String value = one.getKey().equals(Sex.VARIABLE) ? sex.word() : expressions.get(one.getKey());
                    return value == null || one.getValue().allows(value);
                }));
    }
}
