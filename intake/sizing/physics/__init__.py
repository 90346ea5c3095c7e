"""Physics on plain numbers: SI floats and radians in, floats out.

Every function states its formula, units, range of validity and source. An argument outside of its range, nan
among them, is refused with ValueError; a result beyond the largest float is inf. No function knows a product, a
family of equipment, a unit other than SI, or a safety factor that was not handed in.
"""
