package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.expression.Census;
import org.geneticsrules.trait.Sex;

/** Draws litters of two parents, who are drawn anew for each as far as they are not known, whether or not it is heard of. */
final class Litters {

    private final Drawing drawing;
    private final FounderDraw sire;
    private final FounderDraw dam;
    private final Drawing.Sizes sizes;
    private final Census counted;
    private final long most;

    Litters(Drawing drawing, FounderDraw sire, FounderDraw dam, Drawing.Sizes sizes, Census counted, long most) {
        this.drawing = drawing;
        this.sire = sire;
        this.dam = dam;
        this.sizes = sizes;
        this.counted = counted;
        this.most = most;
    }

    /** Draws a litter; empty if it is not heard of. */
    Optional<DrawnLitter> draw() {
        int size = sizes.next();
        for (long tries = 0; tries < most; tries++) {
            DrawnAnimal male = drawing.founder(Optional.empty(), Sex.MALE, sire);
            DrawnAnimal female = drawing.founder(Optional.empty(), Sex.FEMALE, dam);
            Optional<Conception> litter = litter(drawing, male, female, size, counted);
            if (litter.isPresent()) {
                List<DrawnAnimal> kits = new ArrayList<>();
                litter.get()
                        .scored()
                        .forEach(kit -> kits.add(drawing.live(Optional.empty(), kit.sex(), kit.strands())));
                return drawing.selection
                        .known(kits, () -> earlier(drawing, male, female), drawing.chance)
                        .map(known -> litter(drawing, male, female, litter.get(), kits, known));
            }
        }
        throw new TooRareException(
                "no parents who can have kits that are " + counted.word() + " came up",
                most,
                "draw litters by the number of kits conceived.");
    }

    /** A litter of a size; empty if the parents can have no kits that count. */
    static Optional<Conception> litter(
            Drawing drawing, DrawnAnimal male, DrawnAnimal female, int size, Census counted) {
        Conception conception = drawing.conception();
        for (int kit = 0; kit < size; kit++) {
            if (!conception.until(counted, male.strands(), female.strands(), Optional.empty())) {
                return Optional.empty();
            }
        }
        return Optional.of(conception);
    }

    /** A kit that two animals had before, of which nothing but what it shows is asked; empty if they can have none. */
    static Optional<DrawnAnimal> earlier(Drawing drawing, DrawnAnimal male, DrawnAnimal female) {
        return litter(drawing, male, female, 1, Census.SCORED)
                .map(had -> had.scored().get(0))
                .map(kit -> drawing.live(Optional.empty(), kit.sex(), kit.strands()));
    }

    static DrawnLitter litter(
            Drawing drawing,
            DrawnAnimal male,
            DrawnAnimal female,
            Conception conception,
            List<DrawnAnimal> kits,
            Selection.Known known) {
        return new DrawnLitter(
                female,
                List.of(male),
                kits,
                conception.conceived(),
                conception.born(),
                known.probands(),
                known.earlier(),
                drawing.selection.stated(known.probands()),
                1);
    }
}
