package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kinship;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.Worth.Standing;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;

/** Works out what steps are worth. */
final class Steps {

    /** So many outcomes are listed. */
    private static final int MOST_OUTCOMES = 20_000;

    /** So many outcomes are worked out where each is a pedigree of its own. */
    private static final int MOST_PEDIGREES = 400;

    /** A litter of jills has no more outcomes than these. */
    private static final int MOST_LITTERS = 500;

    private static final double ROUNDING = 1e-6;

    private final Distinguishing question;
    private final Pedigree records;
    private final Catalogue catalogue;
    private final Counts.Orders orders = new Counts.Orders();

    Steps(Distinguishing question) {
        this.question = question;
        this.records = question.records();
        this.catalogue = question.candidates().get(0).model().catalogue();
    }

    Worth worth(Step step) {
        try {
            if (step instanceof Step.Look look) {
                return look(look);
            }
            if (step instanceof Step.Test test) {
                return test(test);
            }
            return kits((Step.Kits) step);
        } catch (TooLargeException much) {
            return told(step, Standing.NOT_WORKED_OUT, Optional.ofNullable(much.getMessage()));
        }
    }

    private Worth look(Step.Look step) {
        Individual animal = records.individual(step.animal());
        question.requireShared(step.traits(), step.stage());
        Optional<String> against = Suitability.early(catalogue, step.traits(), step.stage(), step.light())
                .or(() -> recorded(animal, step));
        if (against.isPresent()) {
            return told(step, Standing.NOT_PROPOSED, against);
        }
        Letters letters = Letters.of(catalogue, step.traits(), step.stage(), step.light(), false);
        List<Map<String, Integer>> found = new ArrayList<>();
        List<Individual> supposed = new ArrayList<>();
        for (int x = 0; x < letters.size(); x++) {
            found.add(Map.of(letters.all().get(x).toString(), 1));
            supposed.add(letters.showing(animal, x));
        }
        return one(step, found, supposed);
    }

    /** A second look at the same stage tells nothing, unless looks may be misread. */
    private Optional<String> recorded(Individual animal, Step.Look step) {
        Set<String> left = new LinkedHashSet<>(step.traits());
        for (Observation seen : animal.observations()) {
            if (seen.stage().equals(step.stage()) && seen.looks().size() == 1) {
                seen.traits().stream()
                        .filter(trait -> catalogue.trait(trait).orElseThrow().judgeable(seen.light()) != Judgeable.NO)
                        .forEach(left::remove);
            }
        }
        return left.isEmpty() && question.confusions().equals(Confusions.none())
                ? Optional.of("it is recorded already at this stage")
                : Optional.empty();
    }

    private Worth test(Step.Test step) {
        Individual animal = records.individual(step.animal());
        List<AllelePair> pairs = pairs(step, animal);
        List<Map<String, Integer>> found = new ArrayList<>();
        List<Individual> supposed = new ArrayList<>();
        for (AllelePair pair : pairs) {
            found.add(Map.of(pair.toString(), 1));
            supposed.add(animal.with(GenotypeTest.of(pair, step.error())));
        }
        return one(step, found, supposed);
    }

    /** The genotypes that a test may report: the same under all models. */
    private List<AllelePair> pairs(Step.Test step, Individual animal) {
        Problems problems = new Problems(Stage.REFERENCES);
        List<AllelePair> pairs = List.of();
        List<String> texts = List.of();
        for (var candidate : question.candidates()) {
            Map<String, Locus> loci = candidate.model().loci();
            Locus locus = loci.get(step.locus());
            if (locus == null) {
                problems.unknown("unknown-locus", "", "locus of " + candidate.name(), step.locus(), loci.keySet());
                continue;
            }
            List<AllelePair> own = animal.sex().map(locus::pairs).orElseGet(locus::pairs);
            List<String> words = own.stream().map(AllelePair::toString).sorted().toList();
            if (own.stream().anyMatch(pair -> pair.alleles().isEmpty())) {
                problems.add(
                        "nothing-to-test",
                        "",
                        animal.id() + " has, or by its sex may have, no allele at locus " + locus.id() + " of "
                                + candidate.name(),
                        "another locus, or a record of its sex");
            } else if (pairs.isEmpty()) {
                pairs = own;
                texts = words;
            } else if (!texts.equals(words)) {
                problems.add(
                        "locus-not-shared",
                        "",
                        "a test of locus " + locus.id() + " may report " + String.join(", ", texts) + " by "
                                + question.candidates().get(0).name() + ", but " + String.join(", ", words) + " by "
                                + candidate.name(),
                        "a locus that has the same alleles in all models");
            }
        }
        problems.throwIfAny();
        return pairs;
    }

    /** What one thing more, recorded of one animal, is worth. */
    private Worth one(Step step, List<Map<String, Integer>> found, List<Individual> supposed) {
        String animal = supposed.get(0).id();
        List<Held> held = question.held(Held.relatives(records, List.of(), List.of(), animal));
        Optional<Worth> settled = settled(step, held);
        if (settled.isPresent()) {
            return settled.get();
        }
        return weigh(
                step,
                held,
                found,
                (one, at) -> Math.exp(one.given(supposed.get(at))),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    private Optional<Worth> settled(Step step, List<Held> held) {
        List<String> excluded = held.stream()
                .filter(one -> one.log() == Double.NEGATIVE_INFINITY)
                .map(one -> one.candidate().name())
                .toList();
        return excluded.isEmpty()
                ? Optional.empty()
                : Optional.of(told(
                        step,
                        Standing.SETTLED,
                        Optional.of("the records held exclude " + String.join(", ", excluded))));
    }

    private Worth kits(Step.Kits step) {
        Individual sire = records.individual(step.sire());
        Individual dam = records.individual(step.dam());
        question.requireShared(step.traits(), step.stage());
        Optional<String> against = Suitability.mating(sire, dam, step.effort())
                .or(() -> Suitability.early(catalogue, step.traits(), step.stage(), step.light()));
        if (against.isPresent()) {
            return told(step, Standing.NOT_PROPOSED, against);
        }
        Pedigree relatives = Held.relatives(records, List.of(sire.id()), List.of(dam.id()), "");
        List<Held> held = question.held(relatives);
        Optional<Worth> settled = settled(step, held);
        if (settled.isPresent()) {
            return settled.get();
        }
        View view = View.of(step.traits()).at(step.stage());
        boolean bySex =
                question.candidates().stream().anyMatch(one -> one.compiled().dependsOnSex(view));
        Letters letters = Letters.of(catalogue, step.traits(), step.stage(), step.light(), bySex);
        List<Couple> couples = held.stream()
                .map(one -> Couple.of(one, sire.id(), dam.id(), letters, question.population()))
                .toList();
        Optional<String> lacking =
                couples.stream().map(Couple::lacking).flatMap(Optional::stream).findFirst();
        Optional<String> childless = childless(step, held, couples);
        if (childless.isPresent()) {
            return told(step, Standing.NOT_PROPOSED, childless);
        }
        Optional<Probability> inbreeding = Optional.of(Kinship.of(relatives).between(sire.id(), dam.id()));
        int all = Math.multiplyExact(step.kits(), step.litters());
        if (lacking.isPresent()) {
            return byPedigree(step, held, letters, all, lacking, inbreeding);
        }
        List<Mixture> kits = couples.stream().map(Couple::kits).toList();
        List<KitsNeeded> numbers = numbers(step, couples, kits);
        int[] seen = seen(kits);
        if (Counts.size(all, seen.length) > MOST_OUTCOMES) {
            return new Worth(
                    step,
                    Standing.NOT_WORKED_OUT,
                    Optional.of(many(all, seen.length, MOST_OUTCOMES)),
                    List.of(),
                    List.of(),
                    0,
                    numbers,
                    born(step),
                    animals(step),
                    inbreeding);
        }
        List<int[]> outcomes = new ArrayList<>();
        Counts.each(all, seen.length, counts -> {
            int[] wide = new int[letters.size()];
            for (int i = 0; i < seen.length; i++) {
                wide[seen[i]] = counts[i];
            }
            outcomes.add(wide);
        });
        List<Map<String, Integer>> found =
                outcomes.stream().map(counts -> words(letters, counts)).toList();
        return weigh(
                step,
                held,
                found,
                (one, at) -> Math.exp(orders.log(outcomes.get(at))
                        + kits.get(held.indexOf(one)).log(outcomes.get(at))),
                numbers,
                Optional.empty(),
                inbreeding);
    }

    /** The models under which no kit of these parents lives to be looked at. */
    private static Optional<String> childless(Step.Kits step, List<Held> held, List<Couple> couples) {
        List<String> models = new ArrayList<>();
        for (int m = 0; m < couples.size(); m++) {
            if (couples.get(m).lacking().isEmpty() && !couples.get(m).mayHaveKits()) {
                models.add(held.get(m).candidate().name());
            }
        }
        return childless(step, models);
    }

    private static Optional<String> childless(Step.Kits step, List<String> models) {
        return models.isEmpty()
                ? Optional.empty()
                : Optional.of("no kit of " + step.sire() + " and " + step.dam() + " lives to be looked at by "
                        + String.join(", ", models));
    }

    /** Where the parents cannot be listed, every outcome is a litter put into the pedigree. */
    private Worth byPedigree(
            Step.Kits step,
            List<Held> held,
            Letters letters,
            int all,
            Optional<String> lacking,
            Optional<Probability> inbreeding) {
        if (all > MOST_PEDIGREES) {
            return told(
                    step,
                    Standing.NOT_WORKED_OUT,
                    Optional.of(lacking.orElseThrow() + "; ask about fewer kits than " + MOST_PEDIGREES));
        }
        String prefix = Held.free(held.get(0).relatives(), "kit");
        List<Individual> born = new ArrayList<>();
        String[] ids = new String[all];
        for (int k = 0; k < all; k++) {
            ids[k] = prefix + " " + k;
            born.add(Individual.of(ids[k]));
        }
        Litter litter = Litter.of(prefix + " litter", step.dam(), step.sire(), ids);
        Map<Held, Double> given = new LinkedHashMap<>();
        Set<Integer> possible = new LinkedHashSet<>();
        for (Held one : held) {
            given.put(one, one.with(litter, born));
            for (int x = 0; x < letters.size(); x++) {
                List<Individual> first = new ArrayList<>(born);
                first.set(0, letters.showing(born.get(0), x));
                if (one.with(litter, first) > Double.NEGATIVE_INFINITY) {
                    possible.add(x);
                }
            }
        }
        Optional<String> childless = childless(
                step,
                held.stream()
                        .filter(one -> Objects.requireNonNull(given.get(one)) == Double.NEGATIVE_INFINITY)
                        .map(one -> one.candidate().name())
                        .toList());
        if (childless.isPresent()) {
            return told(step, Standing.NOT_PROPOSED, childless);
        }
        int[] seen = possible.stream().mapToInt(x -> x).sorted().toArray();
        if (Counts.size(all, seen.length) > MOST_PEDIGREES) {
            return told(
                    step,
                    Standing.NOT_WORKED_OUT,
                    Optional.of(lacking.orElseThrow() + "; " + many(all, seen.length, MOST_PEDIGREES)));
        }
        List<Map<String, Integer>> found = new ArrayList<>();
        List<List<Individual>> supposed = new ArrayList<>();
        List<Double> sequences = new ArrayList<>();
        Counts.each(all, seen.length, counts -> {
            int[] wide = new int[letters.size()];
            List<Individual> looks = new ArrayList<>();
            for (int i = 0; i < seen.length; i++) {
                wide[seen[i]] = counts[i];
                for (int k = 0; k < counts[i]; k++) {
                    looks.add(letters.showing(born.get(looks.size()), seen[i]));
                }
            }
            found.add(words(letters, wide));
            supposed.add(looks);
            sequences.add(orders.log(counts));
        });
        return weigh(
                step,
                held,
                found,
                (one, at) -> Math.exp(sequences.get(at)
                        + one.with(litter, supposed.get(at))
                        - Objects.requireNonNull(given.get(one))),
                List.of(),
                lacking.map(reason -> "how many kits it takes is not known: " + reason),
                inbreeding);
    }

    private static String many(int kits, int classes, int limit) {
        return String.format(
                Locale.ROOT,
                "%d kits of %d looks may show %.0f different counts, more than the %d that are gone through; ask about fewer kits or"
                        + " traits",
                kits,
                classes,
                Counts.size(kits, classes),
                limit);
    }

    private List<KitsNeeded> numbers(Step.Kits step, List<Couple> couples, List<Mixture> kits) {
        double logBar = Math.log(question.bar());
        List<KitsNeeded> numbers = new ArrayList<>();
        Reach couple = new Reach(kits, question.held(), logBar, question::tick);
        numbers.addAll(couple.search(Design.COUPLE, 1, 1, question.surenesses()));
        numbers.addAll(couple.search(Design.LITTERS, step.kits(), 1, question.surenesses()));
        List<Mixture> reduced = Mixture.reduced(kits);
        if (Counts.size(step.kits(), kits.get(0).classes()) <= MOST_LITTERS
                && reduced.get(0).classes() > 0
                && couples.stream().allMatch(Couple::sameOfAllSires)) {
            List<Mixture> litters =
                    couples.stream().map(one -> one.litters(step.kits())).toList();
            numbers.addAll(new Reach(litters, question.held(), logBar, question::tick)
                    .search(Design.JILLS, 1, step.kits(), question.surenesses()));
        }
        return numbers;
    }

    /** The looks that a kit may have under some model. */
    private static int[] seen(List<Mixture> kits) {
        Set<Integer> seen = new LinkedHashSet<>();
        for (Mixture one : kits) {
            for (int a = 0; a < one.size(); a++) {
                for (int x = 0; x < one.classes(); x++) {
                    if (one.chances(a)[x] > 0) {
                        seen.add(x);
                    }
                }
            }
        }
        return seen.stream().mapToInt(x -> x).sorted().toArray();
    }

    private static Map<String, Integer> words(Letters letters, int[] counts) {
        Map<String, Integer> found = new LinkedHashMap<>();
        for (int x = 0; x < counts.length; x++) {
            if (counts[x] > 0) {
                found.put(letters.all().get(x).toString(), counts[x]);
            }
        }
        return found;
    }

    /** How likely a model holds an outcome. */
    private interface Chance {
        double of(Held held, int outcome);
    }

    private Worth weigh(
            Step step,
            List<Held> held,
            List<Map<String, Integer>> found,
            Chance chance,
            List<KitsNeeded> numbers,
            Optional<String> reason,
            Optional<Probability> inbreeding) {
        List<Outcome> outcomes = new ArrayList<>();
        double[] sums = new double[held.size()];
        for (int at = 0; at < found.size(); at++) {
            List<Double> chances = new ArrayList<>();
            for (int m = 0; m < sums.length; m++) {
                double one = chance.of(held.get(m), at);
                sums[m] += one;
                chances.add(one);
            }
            if (chances.stream().anyMatch(one -> one > 0)) {
                outcomes.add(new Outcome(found.get(at), chances));
            }
            question.tick();
        }
        for (int m = 0; m < sums.length; m++) {
            requireOne(
                    sums[m],
                    () -> "all that " + step + " may find",
                    held.get(m).candidate().name());
        }
        Measured measured = Measured.of(outcomes, question.beliefs());
        return new Worth(
                step,
                measured.differs() ? Standing.TELLS : Standing.TELLS_NOTHING,
                reason,
                outcomes,
                measured.ratios(),
                measured.bits(),
                numbers,
                born(step),
                animals(step),
                inbreeding);
    }

    /** Refuses chances that do not sum to 1: of something the model makes no claim. What is no number is refused, too. */
    static void requireOne(double sum, Supplier<String> what, String model) {
        if (!(Math.abs(sum - 1) < ROUNDING)) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-claim",
                            "",
                            "the chances of " + what.get() + " sum to " + sum + " under " + model)
                    .expecting("a trait for which this model makes a claim about every animal, at this stage"));
        }
    }

    private static Worth told(Step step, Standing standing, Optional<String> reason) {
        return new Worth(
                step,
                standing,
                reason,
                List.of(),
                List.of(),
                0,
                List.of(),
                born(step),
                animals(step),
                Optional.empty());
    }

    private static int born(Step step) {
        return step instanceof Step.Kits kits && kits.effort().breeds()
                ? Math.multiplyExact(kits.kits(), kits.litters())
                : 0;
    }

    private static Set<String> animals(Step step) {
        if (step instanceof Step.Look look) {
            return Set.of(look.animal());
        }
        if (step instanceof Step.Test test) {
            return Set.of(test.animal());
        }
        Step.Kits kits = (Step.Kits) step;
        Set<String> both = new LinkedHashSet<>();
        both.add(kits.sire());
        both.add(kits.dam());
        return both;
    }
}
