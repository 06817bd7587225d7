package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Causes;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Follows the ways through the same diagram that gave the chances, and writes down what was multiplied and added. */
final class Explainer {

    /** More ways than this are no explanation. */
    private static final int MOST_WAYS = 20_000;

    private final CompiledModel compiled;
    private final Diagram<Phenotype> diagram;
    private final ImmutableList<String> traits;
    private final List<ParentBox> sires;
    private final List<ParentBox> dams;

    Explainer(CompiledModel compiled, Collection<String> traits, List<ParentBox> sires, List<ParentBox> dams) {
        this.compiled = compiled;
        this.diagram = compiled.diagram(traits);
        this.traits = ImmutableList.copyOf(traits);
        this.sires = sires;
        this.dams = dams;
    }

    MatingExplanation explain() {
        List<ParentsCase> cases = cases();
        List<Way> ways = new ArrayList<>();
        diagram.paths((outcome, box) -> {
            Phenotype phenotype = diagram.outcomes().get(outcome);
            for (ParentsCase parents : cases) {
                way(phenotype, box.variables(), parents).ifPresent(ways::add);
            }
            if (ways.size() > MOST_WAYS) {
                throw new TooLargeException(
                        "ways to explain", ways.size(), MOST_WAYS, "ask about fewer traits at a time.");
            }
            return true;
        });
        Map<String, Set<AllelePair>> occurring = new LinkedHashMap<>();
        for (ParentsCase parents : cases) {
            parents.loci()
                    .forEach((locus, segregation) -> occurring
                            .computeIfAbsent(locus, name -> new LinkedHashSet<>())
                            .addAll(segregation.kits().outcomes()));
        }
        return new MatingExplanation(cases, ways, hidden(cases, ways), RestsOn.of(compiled, occurring, traits));
    }

    private List<ParentsCase> cases() {
        BigInteger total = BigInteger.ZERO;
        List<BigInteger> weights = new ArrayList<>();
        for (ParentBox sire : sires) {
            for (ParentBox dam : dams) {
                BigInteger weight = mass(sire).multiply(mass(dam));
                weights.add(weight);
                total = total.add(weight);
            }
        }
        List<ParentsCase> cases = new ArrayList<>();
        for (ParentBox sire : sires) {
            for (ParentBox dam : dams) {
                Map<String, Segregation> loci = new LinkedHashMap<>();
                for (String name : compiled.lociRead(traits)) {
                    loci.put(name, segregation(compiled.model().locus(name), sire.at(name), dam.at(name)));
                }
                int number = cases.size();
                cases.add(new ParentsCase(number, Probability.of(weights.get(number), total), loci));
            }
        }
        return cases;
    }

    private static BigInteger mass(ParentBox box) {
        BigInteger mass = BigInteger.ONE;
        for (BigInteger[] pairs : box.weights().values()) {
            mass = mass.multiply(Arrays.stream(pairs).reduce(BigInteger.ZERO, BigInteger::add));
        }
        return mass;
    }

    private static Segregation segregation(Locus locus, BigInteger[] sire, BigInteger[] dam) {
        Distribution<AllelePair> fromSire = pairs(locus, sire);
        Distribution<AllelePair> fromDam = pairs(locus, dam);
        Map<AllelePair, BigInteger> kits = new LinkedHashMap<>();
        locus.pairs().forEach(pair -> kits.put(pair, BigInteger.ZERO));
        for (int s = 0; s < sire.length; s++) {
            for (int d = 0; d < dam.length; d++) {
                BigInteger weight = sire[s].multiply(dam[d]);
                if (weight.signum() > 0) {
                    for (int mine : locus.positions(locus.pairs().get(s))) {
                        for (int theirs : locus.positions(locus.pairs().get(d))) {
                            kits.merge(locus.pair(mine, theirs), weight, BigInteger::add);
                        }
                    }
                }
            }
        }
        Distribution<AllelePair> young = Distribution.ofWeights(kits);
        return new Segregation(
                locus.id(), fromSire, fromDam, young, young.map(pair -> locus.expression(pair, Sex.FEMALE)));
    }

    private static Distribution<AllelePair> pairs(Locus locus, BigInteger[] weights) {
        Map<AllelePair, BigInteger> shares = new LinkedHashMap<>();
        for (int i = 0; i < weights.length; i++) {
            shares.put(locus.pairs().get(i), weights[i]);
        }
        return Distribution.ofWeights(shares);
    }

    private Optional<Way> way(Phenotype phenotype, Map<String, Allowed> box, ParentsCase parents) {
        Map<String, Probability> factors = new LinkedHashMap<>();
        Probability product = parents.probability();
        for (Map.Entry<String, Allowed> variable : box.entrySet()) {
            Segregation locus = Objects.requireNonNull(parents.loci().get(variable.getKey()));
            Probability factor =
                    locus.expressions().probabilityOf(e -> variable.getValue().allows(e));
            factors.put(variable.getKey(), factor);
            product = product.times(factor);
        }
        if (product.isZero()) {
            return Optional.empty();
        }
        Expressed example = compiled.express(example(box, parents), traits);
        Set<String> masks = new LinkedHashSet<>();
        traits.forEach(trait ->
                masks.addAll(Objects.requireNonNull(example.traits().get(trait)).masks()));
        return Optional.of(
                new Way(phenotype, parents.number(), new Condition(box), factors, product, new ArrayList<>(masks)));
    }

    /** Expressions of one kit that goes this way. */
    private static Map<String, String> example(Map<String, Allowed> box, ParentsCase parents) {
        Map<String, String> expressions = new LinkedHashMap<>();
        parents.loci().forEach((name, locus) -> {
            Allowed allowed = box.get(name);
            locus.expressions().outcomes().stream()
                    .filter(e -> allowed == null || allowed.allows(e))
                    .findFirst()
                    .ifPresent(e -> expressions.put(name, e));
        });
        return expressions;
    }

    private List<Hidden> hidden(List<ParentsCase> cases, List<Way> ways) {
        Map<Phenotype, List<Way>> byPhenotype = new LinkedHashMap<>();
        ways.forEach(way -> byPhenotype
                .computeIfAbsent(way.phenotype(), p -> new ArrayList<>())
                .add(way));
        List<Hidden> hidden = new ArrayList<>();
        for (Phenotype phenotype : diagram.outcomes()) {
            List<Way> leading = byPhenotype.getOrDefault(phenotype, List.of());
            if (leading.isEmpty()) {
                continue;
            }
            for (String locus : compiled.lociRead(traits)) {
                hidden(phenotype, locus, cases, leading).ifPresent(hidden::add);
            }
        }
        return hidden;
    }

    /** What a kit of this look carries at a locus: Bayes' rule over the ways to the look. */
    private Optional<Hidden> hidden(Phenotype phenotype, String name, List<ParentsCase> cases, List<Way> leading) {
        Locus locus = compiled.model().locus(name);
        Map<AllelePair, Probability> joint = new LinkedHashMap<>();
        locus.pairs().forEach(pair -> joint.put(pair, Probability.ZERO));
        Set<Cause> causes = new LinkedHashSet<>();
        for (Way way : leading) {
            ParentsCase parents = cases.get(way.parents());
            Segregation at = Objects.requireNonNull(parents.loci().get(name));
            Allowed allowed = way.expressions().variables().get(name);
            Distribution<AllelePair> carried = at.kits()
                    .given(pair -> allowed == null || allowed.allows(locus.expression(pair, Sex.FEMALE)))
                    .orElseThrow();
            carried.asMap()
                    .forEach((pair, chance) -> joint.merge(pair, chance.times(way.probability()), Probability::plus));
            if (carried.outcomes().size() > 1) {
                Map<String, String> example = example(way.expressions().variables(), parents);
                causes.addAll(Causes.of(compiled, example, name, carried.outcomes(), traits));
            }
        }
        Probability whole = joint.values().stream().reduce(Probability.ZERO, Probability::plus);
        joint.replaceAll((pair, chance) -> chance.dividedBy(whole));
        Distribution<AllelePair> chances = Distribution.of(joint);
        if (chances.outcomes().size() < 2) {
            return Optional.empty();
        }
        if (causes.isEmpty()) {
            causes.add(new Cause(Cause.Kind.SAME_LOOK, otherLoci(leading, name)));
        }
        return Optional.of(new Hidden(
                name, phenotype, new ArrayList<>(chances.outcomes()), Optional.of(chances), new ArrayList<>(causes)));
    }

    private static List<String> otherLoci(List<Way> ways, String locus) {
        Set<String> others = new LinkedHashSet<>();
        ways.forEach(way -> others.addAll(way.expressions().names()));
        others.remove(locus);
        return new ArrayList<>(others);
    }
}
