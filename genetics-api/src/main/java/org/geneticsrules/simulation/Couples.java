package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.trait.Sex;

/** Draws couples with their litters, each couple by itself: one that is not heard of is dropped, and another one drawn. */
final class Couples {

    private final Drawing drawing;
    private final LitterPlan plan;
    private final FounderDraw sires;
    private final FounderDraw dams;
    private final Drawing.Sizes sizes;
    private final Randomness randomness;
    private final long most;

    Couples(Drawing drawing, LitterPlan plan, FounderDraw sires, FounderDraw dams, Randomness randomness, long most) {
        this.drawing = drawing;
        this.plan = plan;
        this.sires = sires;
        this.dams = dams;
        this.sizes = drawing.sizes(plan.size());
        this.randomness = randomness;
        this.most = most;
    }

    /** Two animals and their litters. */
    private record Couple(DrawnAnimal sire, DrawnAnimal dam, List<DrawnLitter> litters) {}

    /** Draws all couples. */
    DrawnPedigree draw() {
        PedigreeBuilder builder = Pedigree.builder("drawn", randomness.toString())
                .catalogue(drawing.genome.model().catalogue().reference());
        Map<String, DrawnAnimal> animals = new LinkedHashMap<>();
        Map<String, DrawnLitter> litters = new LinkedHashMap<>();
        long tried = 0;
        for (int number = 1; number <= plan.couples(); number++) {
            Optional<Couple> kept = Optional.empty();
            for (long tries = 0; kept.isEmpty(); tries++) {
                if (tries == most) {
                    throw new TooRareException(
                            "no couple all of whose litters are to be kept came up",
                            most,
                            "plan fewer litters of each couple, or other parents.");
                }
                kept = couple(number);
                tried++;
            }
            Couple couple = kept.get();
            add(Individual.of(id(couple.sire()), Sex.MALE), plan.sire(), couple.sire(), animals, builder);
            add(Individual.of(id(couple.dam()), Sex.FEMALE), plan.dam(), couple.dam(), animals, builder);
            for (int t = 0; t < couple.litters().size(); t++) {
                DrawnLitter litter = couple.litters().get(t);
                for (DrawnAnimal kit : litter.kits()) {
                    animals.put(id(kit), kit);
                    builder.add(Drop.recorded(Individual.of(id(kit)), kit));
                }
                Litter recorded = recorded(name(number, t), couple, litter);
                builder.add(recorded);
                litters.put(recorded.id(), litter);
            }
        }
        return new DrawnPedigree(builder.build(), animals, litters, tried, randomness);
    }

    private static String id(DrawnAnimal animal) {
        return animal.id().orElseThrow();
    }

    private String name(int couple, int litter) {
        return plan.littersOfEach() == 1 ? Integer.toString(couple) : couple + "." + (litter + 1);
    }

    private static void add(
            Individual bare,
            Founder founder,
            DrawnAnimal drawn,
            Map<String, DrawnAnimal> animals,
            PedigreeBuilder builder) {
        animals.put(bare.id(), drawn);
        builder.add(Drop.recorded(founder.population().map(bare::from).orElse(bare), drawn));
    }

    private static Litter recorded(String id, Couple couple, DrawnLitter litter) {
        return Litter.of(
                        id,
                        id(couple.dam()),
                        id(couple.sire()),
                        litter.kits().stream().map(Couples::id).toArray(String[]::new))
                .counting((int) litter.born(), litter.kits().size())
                .with(litter.ascertainment());
    }

    /** Draws a couple; empty if a litter of it is not heard of. */
    private Optional<Couple> couple(int number) {
        List<Integer> numbers = new ArrayList<>();
        for (int t = 0; t < plan.littersOfEach(); t++) {
            numbers.add(sizes.next());
        }
        for (long tries = 0; tries < most; tries++) {
            DrawnAnimal sire = drawing.founder(Optional.of("sire " + number), Sex.MALE, sires);
            DrawnAnimal dam = drawing.founder(Optional.of("dam " + number), Sex.FEMALE, dams);
            List<Conception> conceived = new ArrayList<>();
            for (int size : numbers) {
                Litters.litter(drawing, sire, dam, size, plan.counted()).ifPresent(conceived::add);
            }
            if (conceived.size() == numbers.size()) {
                return litters(number, sire, dam, conceived).map(litters -> new Couple(sire, dam, litters));
            }
        }
        throw new TooRareException(
                "no parents who can have kits that are " + plan.counted().word() + " came up",
                most,
                "draw litters by the number of kits conceived.");
    }

    private Optional<List<DrawnLitter>> litters(
            int number, DrawnAnimal sire, DrawnAnimal dam, List<Conception> conceived) {
        List<DrawnLitter> litters = new ArrayList<>();
        for (int t = 0; t < conceived.size(); t++) {
            List<DrawnAnimal> kits = new ArrayList<>();
            for (Conception.Kit kit : conceived.get(t).scored()) {
                String id = "kit " + name(number, t) + "." + (kits.size() + 1);
                kits.add(drawing.live(Optional.of(id), kit.sex(), kit.strands()));
            }
            Optional<Selection.Known> known =
                    drawing.selection.known(kits, () -> Litters.earlier(drawing, sire, dam), drawing.chance);
            if (known.isEmpty()) {
                return Optional.empty();
            }
            litters.add(Litters.litter(drawing, sire, dam, conceived.get(t), kits, known.get()));
        }
        return Optional.of(litters);
    }
}
