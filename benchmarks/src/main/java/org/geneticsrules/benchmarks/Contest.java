package org.geneticsrules.benchmarks;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;

/**
 * One mating put to the engine, to both baselines and to a general-purpose engine, and how their answers are compared.
 *
 * @param compiled the model, compiled before the clock starts
 * @param sire the father
 * @param dam the mother
 * @param square the mating as a square of strings
 * @param product the mating as a product of integers
 * @param network the mating as a network of chances
 * @param word how the square names a phenotype of the engine
 * @param code how the product numbers a phenotype of the engine
 */
record Contest(
        CompiledModel compiled,
        Genotype sire,
        Genotype dam,
        StringSquare square,
        IntegerProduct product,
        NetworkMating network,
        Function<Phenotype, String> word,
        ToIntFunction<Phenotype> code) {

    private static final double AGREEMENT = 1e-12;

    /** The mating of a name such as {@code visible 6}, {@code chain 6} or {@code coat}. */
    static Contest of(String name) {
        if (name.equals("coat")) {
            return CoatRules.contest();
        }
        String kind = name.substring(0, name.indexOf(' '));
        int loci = Integer.parseInt(name.substring(name.indexOf(' ') + 1));
        return switch (kind) {
            case "visible" -> SimpleRules.contest(Models.visible(loci), false);
            case "chain" -> SimpleRules.contest(Models.chain(loci), true);
            default -> throw new IllegalArgumentException("no mating \"" + name + "\"; try visible 6, chain 6 or coat");
        };
    }

    static Contest of(
            Model model,
            Genotype sire,
            Genotype dam,
            StringSquare square,
            IntegerProduct product,
            NetworkMating network,
            Function<Phenotype, String> word,
            ToIntFunction<Phenotype> code) {
        CompiledModel compiled = CompiledModel.of(model);
        compiled.diagram();
        return new Contest(compiled, sire, dam, square, product, network, word, code);
    }

    Distribution<Phenotype> engine() {
        return cross().phenotypes();
    }

    Cross cross() {
        return Cross.of(compiled, sire, dam);
    }

    /** The last phenotype in declared order. Its chance is small to read, and reading it has all others worked out too. */
    static Phenotype last(CompiledModel compiled) {
        List<Phenotype> all = compiled.diagram().outcomes();
        return all.get(all.size() - 1);
    }

    /** Refuses to time competitors that do not give the same chances. */
    Contest checked() {
        Distribution<Phenotype> expected = engine();
        Map<String, Integer> boxes = square.count();
        Distribution<String> words = Distribution.ofWeights(new TreeMap<>(boxes));
        if (!words.equals(expected.map(word))) {
            throw new IllegalStateException("the square gives " + words + ", the engine " + expected);
        }
        Approximation<Phenotype> close = cross().approximate();
        expected.asMap().forEach((phenotype, chance) -> {
            if (Math.abs(close.chance(phenotype) / chance.toDouble() - 1) > AGREEMENT) {
                throw new IllegalStateException("floating point gives " + close + ", the engine " + expected);
            }
        });
        if (!close.outcomes().equals(List.copyOf(expected.outcomes()))) {
            throw new IllegalStateException("floating point gives " + close + ", the engine " + expected);
        }
        Map<Integer, Long> weights = new LinkedHashMap<>();
        long[] counts = product.count();
        for (int i = 0; i < counts.length; i++) {
            weights.put(i, counts[i]);
        }
        Distribution<Integer> codes = Distribution.ofWeights(weights);
        if (!codes.equals(expected.map(code::applyAsInt))) {
            throw new IllegalStateException("the product gives " + codes + ", the engine " + expected);
        }
        double[] chances = network.count();
        for (int i = 0; i < chances.length; i++) {
            if (Math.abs(chances[i] - codes.probability(i).toDouble()) > AGREEMENT) {
                throw new IllegalStateException(
                        "the network gives " + chances[i] + " to " + i + ", the engine " + codes.probability(i));
            }
        }
        return this;
    }
}
